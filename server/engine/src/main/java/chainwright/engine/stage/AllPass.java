package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.CorrectiveFilters;
import chainwright.dsp.filter.EqualiserPrototypes;
import chainwright.quantity.Frequency;

/**
 * Designs {@code all-pass}: 0 dB everywhere. It is of first order, with one section, unless the
 * settings say otherwise; {@code Q} holds in second order only.
 */
public final class AllPass implements LinearStage {

  /** Makes the model, which has no state. */
  public AllPass() {}

  @Override
  public StageSound design(StageContext context) {
    Frequency frequency = context.frequency("frequency");
    AnaloguePrototype section =
        context.is("order", "second-order")
            ? EqualiserPrototypes.allPass(frequency, context.quality())
            : EqualiserPrototypes.allPass(frequency);
    AnaloguePrototype prototype =
        CorrectiveFilters.repeat(section, (int) context.number("sections"));
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }
}
