/**
 * Signals at work: what processes the channels of a signal block by block, and how processors are
 * put together.
 *
 * <p>A {@link chainwright.dsp.signal.ProcessorDesign} is immutable and may be shared; the {@link
 * chainwright.dsp.signal.Processor} that it starts has the state of one signal. Samples are doubles
 * with full scale 1.0, arranged as [channel][frame]. No argument and no result is null.
 */
@NullMarked
package chainwright.dsp.signal;

import org.jspecify.annotations.NullMarked;
