/**
 * What bends the wave: memoryless shapers, the harmonics they give to a sine, and saturations whose
 * distortion depends on frequency.
 *
 * <p>Full scale is 1.0; a sine of amplitude 1.0 is at 0 dBFS. Every shaper maps silence to silence
 * and NaN to NaN. Harmonics are those of continuous time: a sampled shaper folds what lies above
 * half its sample rate. No argument and no result is null.
 */
@NullMarked
package chainwright.dsp.nonlinear;

import org.jspecify.annotations.NullMarked;
