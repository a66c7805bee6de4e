package chainwright.engine.stage;

import chainwright.dsp.dynamics.MovingBandDesign;
import chainwright.dsp.filter.EqualiserPrototypes;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code dynamic-bell}: 3:1, at most 4 dB, Q 1.5, 10 ms and 120 ms unless the settings say
 * otherwise.
 *
 * <p>Its peak detector hears a band-pass of its centre and Q; the curve is that of the level there,
 * cut where it is too strong and, with {@code max-boost}, lifted where it is too weak. At rest, in
 * silence, it is lifted by all of that.
 */
public final class DynamicBell implements StageModel {

  /** Makes the model, which has no state. */
  public DynamicBell() {}

  @Override
  public StageSound design(StageContext context) {
    return DynamicBand.design(
        context,
        EqualiserPrototypes.bandPass(context.frequency("centre"), context.quality()),
        gain -> EqualiserPrototypes.bell(context.frequency("centre"), gain, context.quality()));
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return MovingBand.processor(
        audio,
        design(context),
        MovingBandDesign.Shape.BELL,
        context.frequency("centre"),
        context.quality());
  }
}
