/**
 * JSON-RPC 2.0 between two programs over a pair of streams, each message behind a header with its
 * length. Made for a quick start: messages are plain trees of JSON, nothing is found by reflection,
 * and Gson's reading of objects is set up only when the first object has to be read.
 */
@NullMarked
package chainwright.app.lsp.wire;

import org.jspecify.annotations.NullMarked;
