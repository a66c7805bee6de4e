/** All findings of a file: what the text says wrong, what the rules say, what is deliberate. */
@NullMarked
package chainwright.engine.judge;

import org.jspecify.annotations.NullMarked;
