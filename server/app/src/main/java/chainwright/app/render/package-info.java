/** Recordings processed by chains and written to new files, block by block. */
@NullMarked
package chainwright.app.render;

import org.jspecify.annotations.NullMarked;
