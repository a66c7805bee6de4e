package chainwright.engine.stage;

import chainwright.dsp.dynamics.Ballistics;
import chainwright.dsp.dynamics.CompressorCurve;
import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.LevelControlDesign;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.Smoothing;
import chainwright.dsp.dynamics.TwoStageBallistics;
import chainwright.dsp.filter.ConstantFactor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SumDesign;
import java.util.Optional;

/**
 * Designs {@code compressor}: 3:1 with a knee of 6 dB, a peak detector, 10 ms and 150 ms unless the
 * settings say otherwise.
 *
 * <p>Below the threshold only its make-up gain is left, in the share that {@code blend} says; the
 * curve is that of the compressed sound alone. With the detector {@code programme} the level is an
 * RMS, and {@code fast}, {@code slow} and {@code split} take the place of {@code release}; a slow
 * release shorter than the fast one allows no design.
 */
public final class Compressor implements StageModel {

  /** Makes the model, which has no state. */
  public Compressor() {}

  @Override
  public StageSound design(StageContext context) {
    double makeUpDb = context.number("make-up");
    CompressorDesign compressor =
        new CompressorDesign(
            new CompressorCurve(
                context.number("threshold"),
                context.number("ratio"),
                context.number("knee"),
                makeUpDb),
            context.is("detector", "peak")
                ? new Detector.Peak()
                : new Detector.Rms(context.number("rms-window")),
            ballistics(context));
    double share = context.number("blend") / 100;
    return StageSound.ofCompressor(compressor)
        .withResponse(new ConstantFactor(1 - share + share * Math.pow(10, makeUpDb / 20)));
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return design(context)
        .compressor()
        .map(
            compressor ->
                SumDesign.ofBlend(
                    new LevelControlDesign(
                        compressor,
                        context.rate(),
                        audio.key(),
                        context.number("stereo-link") / 100,
                        0),
                    context.number("blend") / 100));
  }

  private static Ballistics ballistics(StageContext context) {
    double attackSeconds = context.number("attack");
    return context.is("detector", "programme")
        ? new TwoStageBallistics(
            attackSeconds,
            context.number("fast"),
            context.number("slow"),
            context.number("split") / 100)
        : new SmoothedBallistics(attackSeconds, context.number("release"), Smoothing.BRANCHING);
  }
}
