/**
 * Sounds that come back: repeats and the sound of a room.
 *
 * <p>Designs are immutable, what they start has the state of one signal. Samples are doubles with
 * full scale 1.0, arranged as [channel][frame]. No argument and no result is null.
 */
@NullMarked
package chainwright.dsp.reverb;

import org.jspecify.annotations.NullMarked;
