/** Reference numbers for the tests. */
@NullMarked
package chainwright.dsp.reference;

import org.jspecify.annotations.NullMarked;
