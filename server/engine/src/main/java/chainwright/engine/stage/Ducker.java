package chainwright.engine.stage;

import chainwright.dsp.dynamics.CompressorCurve;
import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.MaxReductionCurve;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.Smoothing;

/**
 * Designs {@code ducker}: 2 dB, 10 ms and 150 ms unless the settings say otherwise.
 *
 * <p>The levels of its curve are those of the key, which its detector follows by its peaks: the
 * reduction [dB] begins at the threshold and is whole where the key is as far above it. The hold is
 * not part of the design.
 */
public final class Ducker implements StageModel {

  /** Makes the model, which has no state. */
  public Ducker() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.ofCompressor(
        new CompressorDesign(
            new MaxReductionCurve(
                CompressorCurve.of(context.number("threshold"), Double.POSITIVE_INFINITY, 0),
                context.number("reduction")),
            new Detector.Peak(),
            new SmoothedBallistics(
                context.number("attack"), context.number("release"), Smoothing.BRANCHING)));
  }
}
