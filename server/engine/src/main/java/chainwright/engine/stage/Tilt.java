package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.EqualiserPrototypes;

/**
 * Designs {@code tilt}: first order, half the tilt [dB] up at one end and half down at the other;
 * the pivot is 800 Hz unless written.
 */
public final class Tilt implements LinearStage {

  /** Makes the model, which has no state. */
  public Tilt() {}

  @Override
  public StageSound design(StageContext context) {
    AnaloguePrototype prototype =
        EqualiserPrototypes.tilt(context.frequency("pivot"), context.decibels("tilt"));
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }
}
