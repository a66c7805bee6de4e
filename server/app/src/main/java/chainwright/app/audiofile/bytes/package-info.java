/** What decoders take, and what they report: bytes from any place, and parts that are damaged. */
@NullMarked
package chainwright.app.audiofile.bytes;

import org.jspecify.annotations.NullMarked;
