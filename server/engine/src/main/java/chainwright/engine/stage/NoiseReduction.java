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
    return StageSound.NOTHING;
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return Optional.of(
        new NoiseReductionDesign(
            context.rate(), context.number("reduction"), context.number("smoothing")));
  }
}
