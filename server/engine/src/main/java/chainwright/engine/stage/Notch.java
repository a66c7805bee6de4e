package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.EqualiserPrototypes;
import chainwright.quantity.Frequency;

/**
 * Designs {@code notch}: Q 30 unless written. Without {@code depth} nothing is left at the centre.
 *
 * <p>With a depth the quality factor is that of the poles; the points 3 dB down then lie a little
 * closer together, by less than 1 % from -20 dB on.
 */
public final class Notch implements LinearStage {

  /** Makes the model, which has no state. */
  public Notch() {}

  @Override
  public StageSound design(StageContext context) {
    Frequency centre = context.frequency("centre");
    AnaloguePrototype prototype =
        context.settings().number("depth").isPresent()
            ? EqualiserPrototypes.dip(centre, context.quality(), context.decibels("depth"))
            : EqualiserPrototypes.notch(centre, context.quality());
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }
}
