package chainwright.engine.stage;

import chainwright.dsp.dynamics.TruePeakLimitingDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code true-peak-limiter}: no true peak above the ceiling [dBTP]; 3 ms of look-ahead and
 * 120 ms of release unless written. Its levels are those of true peaks.
 */
public final class TruePeakLimiter implements StageModel {

  /** Makes the model, which has no state. */
  public TruePeakLimiter() {}

  @Override
  public StageSound design(StageContext context) {
    return PeakLimit.design(context);
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return Optional.of(
        new TruePeakLimitingDesign(
            PeakLimit.limiter(context), context.rate(), (int) context.number("oversampling")));
  }
}
