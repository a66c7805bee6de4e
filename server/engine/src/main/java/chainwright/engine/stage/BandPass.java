package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.EqualiserPrototypes;

/** Designs {@code band-pass}: 0 dB at the centre; Q 0.7071 unless written. */
public final class BandPass implements LinearStage {

  /** Makes the model, which has no state. */
  public BandPass() {}

  @Override
  public StageSound design(StageContext context) {
    AnaloguePrototype prototype =
        EqualiserPrototypes.bandPass(context.frequency("centre"), context.quality());
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }
}
