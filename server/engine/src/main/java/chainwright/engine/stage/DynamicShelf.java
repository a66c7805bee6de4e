package chainwright.engine.stage;

import chainwright.dsp.dynamics.MovingBandDesign;
import chainwright.dsp.filter.EqualiserPrototypes;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.quantity.Frequency;
import java.util.Optional;

/**
 * Designs {@code dynamic-shelf}: 3:1, at most 4 dB, 10 ms and 120 ms unless the settings say
 * otherwise.
 *
 * <p>Its peak detector hears a Butterworth low-pass or high-pass of 12 dB/oct at the cutoff; the
 * curve is that of the level there, cut where it is too strong and, with {@code max-boost}, lifted
 * where it is too weak. At rest, in silence, it is lifted by all of that.
 */
public final class DynamicShelf implements StageModel {

  /** Makes the model, which has no state. */
  public DynamicShelf() {}

  @Override
  public StageSound design(StageContext context) {
    Frequency cutoff = context.frequency("cutoff");
    return DynamicBand.design(
        context,
        context.is("side", "low")
            ? PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 2, cutoff)
            : PassPrototypes.highPass(PassFamily.BUTTERWORTH, 2, cutoff),
        gain ->
            context.is("side", "low")
                ? EqualiserPrototypes.lowShelf(cutoff, gain, context.quality())
                : EqualiserPrototypes.highShelf(cutoff, gain, context.quality()));
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return MovingBand.processor(
        audio,
        design(context),
        context.is("side", "low")
            ? MovingBandDesign.Shape.LOW_SHELF
            : MovingBandDesign.Shape.HIGH_SHELF,
        context.frequency("cutoff"),
        context.quality());
  }
}
