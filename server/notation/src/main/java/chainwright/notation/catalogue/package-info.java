/**
 * The trade's knowledge as data: stage kinds, their settings, ranges by kind of source, citations.
 */
@NullMarked
package chainwright.notation.catalogue;

import org.jspecify.annotations.NullMarked;
