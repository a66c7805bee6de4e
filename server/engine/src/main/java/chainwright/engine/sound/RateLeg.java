package chainwright.engine.sound;

import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.RateConversion;

/**
 * A change of sample rate on the way of a signal, and what processes the audio behind it.
 *
 * @param conversion the change of rate
 * @param body what comes behind it, at the new rate, up to the next change; its latency is dropped
 *     before that, so that every leg begins with the frame of the time 0
 */
public record RateLeg(RateConversion conversion, ProcessorDesign body) {}
