/**
 * From the tree to the model: each section is read with the catalogue's vocabulary, by itself.
 *
 * <p>Reading never fails: what cannot be understood is left out of the model and reported as a
 * finding at the tightest span, with an edit that mends it where there is one.
 */
@NullMarked
package chainwright.notation.lowering;

import org.jspecify.annotations.NullMarked;
