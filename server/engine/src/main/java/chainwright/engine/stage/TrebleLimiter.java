package chainwright.engine.stage;

import chainwright.dsp.dynamics.CompressorCurve;
import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.MaxReductionCurve;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.Smoothing;
import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;

/**
 * Designs {@code treble-limiter}: at most 3 dB above 7 kHz, 0.5 ms and 40 ms unless the settings
 * say otherwise. Its peak detector hears what a Butterworth high-pass of 12 dB/oct at the cutoff
 * lets through; a cutoff from half the sample rate on allows no design.
 */
public final class TrebleLimiter implements StageModel {

  /** Makes the model, which has no state. */
  public TrebleLimiter() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.ofCompressor(
            new CompressorDesign(
                new MaxReductionCurve(
                    CompressorCurve.of(context.number("threshold"), Double.POSITIVE_INFINITY, 0),
                    context.number("max-reduction")),
                new Detector.Peak(),
                new SmoothedBallistics(
                    context.number("attack"), context.number("release"), Smoothing.BRANCHING)))
        .withDetection(
            Curve.ANALOGUE.design(
                PassPrototypes.highPass(PassFamily.BUTTERWORTH, 2, context.frequency("cutoff")),
                context.rate()));
  }
}
