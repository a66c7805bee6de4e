package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.EqualiserPrototypes;

/**
 * Designs {@code low-shelf}: half its gain [dB] at the cutoff; Q 0.7071 unless Q or slope is
 * written.
 */
public final class LowShelf implements LinearStage {

  /** Makes the model, which has no state. */
  public LowShelf() {}

  @Override
  public StageSound design(StageContext context) {
    AnaloguePrototype prototype =
        EqualiserPrototypes.lowShelf(
            context.frequency("cutoff"), context.decibels("gain"), context.shelfQuality());
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }
}
