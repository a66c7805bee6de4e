package chainwright.engine.stage;

import chainwright.dsp.dynamics.LimiterCurve;
import chainwright.dsp.nonlinear.HardClipShaper;
import chainwright.dsp.nonlinear.Harmonics;
import chainwright.dsp.nonlinear.Shaper;
import chainwright.dsp.nonlinear.ShapingDesign;
import chainwright.dsp.nonlinear.SoftClipShaper;
import chainwright.dsp.signal.OversamplingDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code clipper}: 2 dB of knee unless written.
 *
 * <p>The rounding begins the knee [dB] below the ceiling and ends as far above it, so the full
 * width of the curve's knee is twice that. The curve is that of peaks, at once and without a
 * detector.
 *
 * <p>Its audio is cut at the multiple of the rate that {@code oversampling} says. A hard clip 3 dB
 * into a 5 kHz sine at 48 kHz folds back at −33 dBFS without, −49 at 2 times, −65 at 4, −77 at 8,
 * −89 at 16 and −101 at 32 times (measured by this project's tests; the strongest line below half
 * the rate).
 */
public final class Clipper implements StageModel {

  /** Makes the model, which has no state. */
  public Clipper() {}

  @Override
  public StageSound design(StageContext context) {
    double ceilingDbfs = context.number("ceiling");
    Shaper shaper = shaper(context);
    return StageSound.ofHarmonics(
            (hertz, levelDbfs, count) -> Harmonics.analyze(shaper, levelDbfs, count))
        .withCurve(new LimiterCurve(ceilingDbfs, kneeWidthDb(context)));
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return Optional.of(
        new OversamplingDesign(
            new ShapingDesign(shaper(context)), (int) context.number("oversampling")));
  }

  private static Shaper shaper(StageContext context) {
    double ceilingDbfs = context.number("ceiling");
    double kneeWidthDb = kneeWidthDb(context);
    return kneeWidthDb == 0
        ? new HardClipShaper(ceilingDbfs)
        : new SoftClipShaper(ceilingDbfs, kneeWidthDb);
  }

  private static double kneeWidthDb(StageContext context) {
    return 2 * context.number("knee");
  }
}
