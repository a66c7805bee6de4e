/** Places in a text: spans of offsets, lines, and edits. Offsets count UTF-16 units from 0. */
@NullMarked
package chainwright.notation.text;

import org.jspecify.annotations.NullMarked;
