package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.EqualiserPrototypes;

/** Designs {@code bell}. */
public final class Bell implements LinearStage {

  /** Makes the model, which has no state. */
  public Bell() {}

  @Override
  public StageSound design(StageContext context) {
    AnaloguePrototype prototype =
        EqualiserPrototypes.bell(
            context.frequency("centre"), context.decibels("gain"), context.quality());
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }
}
