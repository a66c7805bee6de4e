package chainwright.engine.stage;

import chainwright.dsp.filter.PureDelay;
import chainwright.quantity.TimeSpan;

/**
 * Designs {@code delay}: later by its time [s]. The time is wanted, so it is part of the response
 * and not a latency that others have to make up for.
 */
public final class Delay implements StageModel {

  /** Makes the model, which has no state. */
  public Delay() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.ofResponse(new PureDelay(new TimeSpan(context.delaySeconds())));
  }
}
