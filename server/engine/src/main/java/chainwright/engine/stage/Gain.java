package chainwright.engine.stage;

import chainwright.dsp.filter.ConstantFactor;

/** Designs {@code gain}: the same gain [dB] at every frequency. */
public final class Gain implements LinearStage {

  /** Makes the model, which has no state. */
  public Gain() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.ofResponse(new ConstantFactor(Math.pow(10, context.number("gain") / 20)));
  }
}
