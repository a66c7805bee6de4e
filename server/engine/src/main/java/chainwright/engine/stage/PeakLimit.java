package chainwright.engine.stage;

import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.LimiterCurve;
import chainwright.dsp.dynamics.LimiterDesign;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.Smoothing;

/** What both limiters have in common: all but the peaks that are meant. */
final class PeakLimit {

  private PeakLimit() {}

  /**
   * Designs a limiter without a knee. Thanks to its look-ahead the whole reduction is there when
   * the peak comes, which is an attack of 0.
   */
  static StageSound design(StageContext context) {
    return StageSound.ofCompressor(
        new CompressorDesign(
            new LimiterCurve(context.number("ceiling"), 0),
            new Detector.Peak(),
            new SmoothedBallistics(0, context.number("release"), Smoothing.BRANCHING)));
  }

  /** The ceiling [dBFS or dBTP], look-ahead [s] and release [s] that the stage is set to. */
  static LimiterDesign limiter(StageContext context) {
    return new LimiterDesign(
        new LimiterCurve(context.number("ceiling"), 0),
        context.number("look-ahead"),
        context.number("release"));
  }
}
