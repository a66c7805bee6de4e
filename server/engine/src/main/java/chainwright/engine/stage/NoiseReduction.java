package chainwright.engine.stage;

import chainwright.dsp.repair.NoiseReductionDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code noise-reduction}: 6 dB, a sixth of an octave, unless written. At rest it passes
 * the signal; what it takes away depends on the noise in the recording.
 */
public final class NoiseReduction implements StageModel {

  /** Makes the model, which has no state. */
  public NoiseReduction() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING.withLatency(
        running(context).latencyFrames() / context.rate().hertz());
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    return Optional.of(running(audio.context()));
  }

  private static NoiseReductionDesign running(StageContext context) {
    return new NoiseReductionDesign(
        context.rate(), context.number("reduction"), context.number("smoothing"));
  }
}
