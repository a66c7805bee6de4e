/** Pages of words: what they hold, and how they are laid out for a terminal or another program. */
@NullMarked
package chainwright.app.page;

import org.jspecify.annotations.NullMarked;
