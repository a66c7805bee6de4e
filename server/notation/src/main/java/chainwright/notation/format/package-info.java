/**
 * The canonical layout of a text: indentation, columns and spelling. It knows no catalogue, never
 * changes the meaning, never loses a comment, and leaves lines with errors as they are.
 */
@NullMarked
package chainwright.notation.format;

import org.jspecify.annotations.NullMarked;
