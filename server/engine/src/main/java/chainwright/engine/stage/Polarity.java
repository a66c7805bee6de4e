package chainwright.engine.stage;

import chainwright.dsp.filter.ConstantFactor;

/** Designs {@code polarity}: a factor of -1 where it is inverted, else 1. */
public final class Polarity implements LinearStage {

  /** Makes the model, which has no state. */
  public Polarity() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.ofResponse(new ConstantFactor(context.is("polarity", "inverted") ? -1 : 1));
  }
}
