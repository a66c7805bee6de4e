/** Measurements of the parts, and what they are measured against. */
@NullMarked
package chainwright.bench;

import org.jspecify.annotations.NullMarked;
