package chainwright.engine.stage;

import chainwright.dsp.dynamics.PeakLimitingDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code limiter}: no sample above the ceiling [dBFS]; 3 ms of look-ahead and 120 ms of
 * release unless written.
 */
public final class Limiter implements StageModel {

  /** Makes the model, which has no state. */
  public Limiter() {}

  @Override
  public StageSound design(StageContext context) {
    return PeakLimit.design(context);
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return Optional.of(
        new PeakLimitingDesign(
            PeakLimit.limiter(context), context.rate(), context.number("stereo-link") / 100));
  }
}
