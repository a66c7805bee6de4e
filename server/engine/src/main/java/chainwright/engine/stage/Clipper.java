package chainwright.engine.stage;

import chainwright.dsp.dynamics.LimiterCurve;
import chainwright.dsp.nonlinear.HardClipShaper;
import chainwright.dsp.nonlinear.Harmonics;
import chainwright.dsp.nonlinear.Shaper;
import chainwright.dsp.nonlinear.SoftClipShaper;

/**
 * Designs {@code clipper}: 2 dB of knee unless written.
 *
 * <p>The rounding begins the knee [dB] below the ceiling and ends as far above it, so the full
 * width of the curve's knee is twice that. The curve is that of peaks, at once and without a
 * detector.
 */
public final class Clipper implements StageModel {

  /** Makes the model, which has no state. */
  public Clipper() {}

  @Override
  public StageSound design(StageContext context) {
    double ceilingDbfs = context.number("ceiling");
    double kneeWidthDb = 2 * context.number("knee");
    Shaper shaper =
        kneeWidthDb == 0
            ? new HardClipShaper(ceilingDbfs)
            : new SoftClipShaper(ceilingDbfs, kneeWidthDb);
    return StageSound.ofHarmonics(
            (hertz, levelDbfs, count) -> Harmonics.analyze(shaper, levelDbfs, count))
        .withCurve(new LimiterCurve(ceilingDbfs, kneeWidthDb));
  }
}
