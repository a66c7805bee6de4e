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
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.notation.model.Value;
import chainwright.quantity.Frequency;
import java.util.List;

/**
 * Designs {@code de-ess}: 4:1, at most 4 dB, 0.5 ms and 50 ms unless the settings say otherwise. It
 * has no knee, and its peak detector hears the band, split off by Linkwitz-Riley filters of 12
 * dB/oct unless {@code slope} is written.
 */
public final class DeEss implements StageModel {

  /** Makes the model, which has no state. */
  public DeEss() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.ofCompressor(
            new CompressorDesign(
                new MaxReductionCurve(
                    CompressorCurve.of(context.number("threshold"), context.number("ratio"), 0),
                    context.number("max-reduction")),
                new Detector.Peak(),
                new SmoothedBallistics(
                    context.number("attack"), context.number("release"), Smoothing.BRANCHING)))
        .withDetection(band(context));
  }

  private static Response band(StageContext context) {
    int order = PassPrototypes.order(context.slope());
    Value.Span band = context.span("band");
    return new ResponseProduct(
        List.of(
            Curve.ANALOGUE.designLater(
                PassPrototypes.highPass(
                    PassFamily.LINKWITZ_RILEY, order, Frequency.ofHertz(band.low().baseValue())),
                context.rate()),
            Curve.ANALOGUE.designLater(
                PassPrototypes.lowPass(
                    PassFamily.LINKWITZ_RILEY, order, Frequency.ofHertz(band.high().baseValue())),
                context.rate())));
  }
}
