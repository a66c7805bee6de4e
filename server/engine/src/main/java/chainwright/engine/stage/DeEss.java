package chainwright.engine.stage;

import chainwright.dsp.dynamics.CompressorCurve;
import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.KeyInput;
import chainwright.dsp.dynamics.LevelControlDesign;
import chainwright.dsp.dynamics.MaxReductionCurve;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.Smoothing;
import chainwright.dsp.filter.Crossover;
import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.OneBandDesign;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.notation.model.Value;
import chainwright.quantity.Frequency;
import chainwright.quantity.Quantity;
import chainwright.quantity.Slope;
import java.util.List;
import java.util.Optional;

/**
 * Designs {@code de-ess}: 4:1, at most 4 dB, 0.5 ms and 50 ms unless the settings say otherwise. It
 * has no knee, and its peak detector hears the band, split off by Linkwitz-Riley filters of 12
 * dB/oct unless {@code slope} is written. At rest the whole sound passes unchanged; in {@code
 * split-band} the bands add up with a flat magnitude and the phase of their crossovers.
 */
public final class DeEss implements StageModel {

  /** Makes the model, which has no state. */
  public DeEss() {}

  @Override
  public StageSound design(StageContext context) {
    StageSound sound =
        StageSound.ofCompressor(
                new CompressorDesign(
                    new MaxReductionCurve(
                        CompressorCurve.of(context.number("threshold"), context.number("ratio"), 0),
                        context.number("max-reduction")),
                    new Detector.Peak(),
                    new SmoothedBallistics(
                        context.number("attack"), context.number("release"), Smoothing.BRANCHING)))
            .withDetection(band(context));
    return isSplit(context) ? sound.withResponse(sumOfBands(context)) : sound;
  }

  private static boolean isSplit(StageContext context) {
    return context.is("mode", "split-band");
  }

  /**
   * Turns down the whole sound, or in {@code split-band} the band between its two crossovers, whose
   * sum is an all-pass while it is at rest.
   */
  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    StageSound sound = design(context);
    CompressorDesign compressor = sound.compressor().orElseThrow();
    boolean isSplit = isSplit(context);
    boolean hearsItsBand = isSplit && audio.key().signal().isEmpty();
    KeyInput key =
        hearsItsBand
            ? audio.key()
            : audio.keyThrough(LinearStage.running(sound.detection().orElseThrow()));
    ProcessorDesign control = LevelControlDesign.of(compressor, context.rate(), key);
    return Optional.of(isSplit ? within(context, control) : control);
  }

  private static ProcessorDesign within(StageContext context, ProcessorDesign control) {
    Value.Span band = context.span("band");
    return new OneBandDesign(
        crossover(band.low(), context), crossover(band.high(), context), control);
  }

  private static Crossover crossover(Quantity end, StageContext context) {
    return Crossover.of(Frequency.ofHertz(end.baseValue()), context.slope(), context.rate());
  }

  private static Response sumOfBands(StageContext context) {
    Value.Span band = context.span("band");
    Slope slope = context.slope();
    return new ResponseProduct(
        List.of(
            Crossover.sumOf(Frequency.ofHertz(band.low().baseValue()), slope, context.rate()),
            Crossover.sumOf(Frequency.ofHertz(band.high().baseValue()), slope, context.rate())));
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
