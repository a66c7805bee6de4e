package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.EqualiserPrototypes;

/**
 * Designs {@code high-shelf}: half its gain [dB] at the cutoff; Q 0.7071 unless Q or slope is
 * written.
 */
public final class HighShelf implements LinearStage {

  /** Makes the model, which has no state. */
  public HighShelf() {}

  @Override
  public StageSound design(StageContext context) {
    AnaloguePrototype prototype =
        EqualiserPrototypes.highShelf(
            context.frequency("cutoff"), context.decibels("gain"), context.shelfQuality());
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }
}
