/** The files at hand: those open in an editor and those read from disk, as immutable snapshots. */
@NullMarked
package chainwright.app.workspace;

import org.jspecify.annotations.NullMarked;
