/**
 * The lossless tree: every character of a text stands in it, and parsing never fails.
 *
 * <p>A file is a row of sections. A section begins where a line begins with one of the five
 * top-level words and is parsed by itself, so that an edit costs the sections it touches and no
 * more, and one broken section cannot spoil the next. Tokens never span lines.
 */
@NullMarked
package chainwright.notation.syntax;

import org.jspecify.annotations.NullMarked;
