/** Chains written in tests. */
@NullMarked
package chainwright.engine;

import org.jspecify.annotations.NullMarked;
