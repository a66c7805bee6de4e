package chainwright.engine.stage;

import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.DynamicBandCurve;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.Smoothing;
import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.Curve;

/** What dynamic bells and shelves have in common: all but the region. */
final class DynamicBand {

  private DynamicBand() {}

  /**
   * Designs a band that rests at 0 dB and is cut above its threshold, without a knee. The curve is
   * that of the region's level; it does not hold the boost of a region that is too weak.
   */
  static StageSound design(StageContext context, AnaloguePrototype region) {
    return StageSound.ofCompressor(
            new CompressorDesign(
                new DynamicBandCurve(
                    context.number("threshold"),
                    context.number("ratio"),
                    0,
                    0,
                    -context.number("max-cut")),
                new Detector.Peak(),
                new SmoothedBallistics(
                    context.number("attack"), context.number("release"), Smoothing.BRANCHING)))
        .withDetection(Curve.ANALOGUE.design(region, context.rate()));
  }
}
