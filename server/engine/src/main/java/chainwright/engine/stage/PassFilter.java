package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;

/** What a high-pass and a low-pass have in common: all but the side that passes. */
interface PassFilter extends LinearStage {

  /** The only slope at which a quality factor holds [dB/oct]: that of one second-order section. */
  double SLOPE_WITH_QUALITY = 12;

  /** Returns the filter of a family and an order from 1 to 8. */
  AnaloguePrototype ofFamily(PassFamily family, int order, Frequency cutoff);

  /** Returns the filter of second order whose gain at the cutoff is the quality factor. */
  AnaloguePrototype ofQuality(Frequency cutoff, QualityFactor quality);

  /**
   * Designs the filter. A written {@code Q} holds for Butterworth at 12 dB/oct only, as the
   * catalogue says; elsewhere the family and the slope decide alone.
   */
  @Override
  default StageSound design(StageContext context) {
    AnaloguePrototype prototype = prototype(context);
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }

  private AnaloguePrototype prototype(StageContext context) {
    Frequency cutoff = context.frequency("cutoff");
    PassFamily family = family(context);
    boolean hasQuality =
        context.settings().written("Q").isPresent()
            && family == PassFamily.BUTTERWORTH
            && context.slope().decibelsPerOctave() == SLOPE_WITH_QUALITY;
    return hasQuality
        ? ofQuality(cutoff, context.quality())
        : ofFamily(family, PassPrototypes.order(context.slope()), cutoff);
  }

  private static PassFamily family(StageContext context) {
    if (context.is("family", "linkwitz-riley")) {
      return PassFamily.LINKWITZ_RILEY;
    }
    if (context.is("family", "bessel")) {
      return context.is("normalised", "phase")
          ? PassFamily.BESSEL_PHASE
          : PassFamily.BESSEL_MAGNITUDE;
    }
    return PassFamily.BUTTERWORTH;
  }
}
