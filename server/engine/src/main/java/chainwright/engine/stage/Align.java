package chainwright.engine.stage;

import chainwright.dsp.filter.PureDelay;
import chainwright.quantity.TimeSpan;

/**
 * Designs {@code align}: later (+) or earlier (-) by its time [s]. Earlier needs look-ahead, which
 * is a latency of the same length.
 */
public final class Align implements StageModel {

  /** Makes the model, which has no state. */
  public Align() {}

  @Override
  public StageSound design(StageContext context) {
    double seconds = context.delaySeconds();
    return StageSound.ofResponse(new PureDelay(new TimeSpan(seconds)))
        .withLatency(Math.max(0, -seconds));
  }
}
