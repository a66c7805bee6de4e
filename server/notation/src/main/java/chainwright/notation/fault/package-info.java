/** The names of everything that can be wrong with a text. */
@NullMarked
package chainwright.notation.fault;

import org.jspecify.annotations.NullMarked;
