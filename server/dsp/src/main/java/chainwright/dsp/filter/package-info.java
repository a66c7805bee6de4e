/**
 * Linear stages: what they are by design, what they do to every frequency, and how they run.
 *
 * <p>An {@link chainwright.dsp.filter.AnaloguePrototype} says what is meant, a {@link
 * chainwright.dsp.filter.Curve} makes a digital {@link chainwright.dsp.filter.FilterCascade} of it,
 * and every {@link chainwright.dsp.filter.Response} can be asked for its magnitude [dB], phase
 * [rad] and group delay [s]. Designs are immutable and thread-safe. Responses have the sign
 * convention {@code e^(+jwt)}: a delay has a falling phase. No argument and no result is null.
 */
@NullMarked
package chainwright.dsp.filter;

import org.jspecify.annotations.NullMarked;
