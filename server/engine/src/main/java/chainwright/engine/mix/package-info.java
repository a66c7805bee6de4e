/**
 * Chains and buses together: what goes where, at which level and how late, and what sums come of
 * it. Nothing here starts a thread; who runs it decides what is done at once.
 */
@NullMarked
package chainwright.engine.mix;

import org.jspecify.annotations.NullMarked;
