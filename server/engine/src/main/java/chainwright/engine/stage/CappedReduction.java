package chainwright.engine.stage;

import chainwright.dsp.dynamics.CompressorCurve;
import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.MaxReductionCurve;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.Smoothing;

/** What turns down all that is over a threshold, but by no more than a setting says. */
final class CappedReduction {

  private CappedReduction() {}

  /**
   * Designs it with a peak detector: the reduction [dB] begins at the threshold and is whole where
   * the level is as far above it.
   */
  static StageSound design(StageContext context, String mostSetting) {
    return StageSound.ofCompressor(
        new CompressorDesign(
            new MaxReductionCurve(
                CompressorCurve.of(context.number("threshold"), Double.POSITIVE_INFINITY, 0),
                context.number(mostSetting)),
            new Detector.Peak(),
            new SmoothedBallistics(
                context.number("attack"), context.number("release"), Smoothing.BRANCHING)));
  }
}
