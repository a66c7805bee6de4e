package chainwright.engine.stage;

import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.DynamicBandCurve;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.Smoothing;
import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.Response;
import chainwright.quantity.Decibels;
import java.util.function.Function;

/** What dynamic bells and shelves have in common: all but the region. */
final class DynamicBand {

  private DynamicBand() {}

  /**
   * Designs a band that is cut above its threshold and boosted below it, without a knee. The curve
   * is that of the region's level. At rest all of the boost is there.
   *
   * @param region what the detector hears
   * @param moved the filter that moves, by its gain
   */
  static StageSound design(
      StageContext context, AnaloguePrototype region, Function<Decibels, AnaloguePrototype> moved) {
    double boostDb = context.number("max-boost");
    Response atRest =
        boostDb == 0
            ? StageSound.NOTHING.response()
            : Curve.BILINEAR.design(moved.apply(new Decibels(boostDb)), context.rate());
    return StageSound.ofCompressor(
            new CompressorDesign(
                new DynamicBandCurve(
                    context.number("threshold"),
                    context.number("ratio"),
                    context.number("max-cut"),
                    boostDb),
                new Detector.Peak(),
                new SmoothedBallistics(
                    context.number("attack"), context.number("release"), Smoothing.BRANCHING)))
        .withResponse(atRest)
        .withDetection(Curve.ANALOGUE.design(region, context.rate()));
  }
}
