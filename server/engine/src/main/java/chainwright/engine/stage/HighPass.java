package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.EqualiserPrototypes;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;

/**
 * Designs {@code high-pass}: Butterworth of 12 dB/oct unless the settings say otherwise.
 *
 * <p>A written {@code Q} holds for Butterworth at 12 dB/oct only. Linkwitz-Riley has no odd order,
 * so 6, 18, 30 and 42 dB/oct of it allow no design.
 */
public final class HighPass implements PassFilter {

  /** Makes the model, which has no state. */
  public HighPass() {}

  @Override
  public AnaloguePrototype ofFamily(PassFamily family, int order, Frequency cutoff) {
    return PassPrototypes.highPass(family, order, cutoff);
  }

  @Override
  public AnaloguePrototype ofQuality(Frequency cutoff, QualityFactor quality) {
    return EqualiserPrototypes.highPass(cutoff, quality);
  }
}
