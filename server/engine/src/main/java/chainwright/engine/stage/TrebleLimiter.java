package chainwright.engine.stage;

import chainwright.dsp.dynamics.MovingBandDesign;
import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.quantity.QualityFactor;
import java.util.Optional;

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
    return CappedReduction.design(context, "max-reduction")
        .withDetection(
            Curve.ANALOGUE.design(
                PassPrototypes.highPass(PassFamily.BUTTERWORTH, 2, context.frequency("cutoff")),
                context.rate()));
  }

  /** The shelf that is turned down is the steepest without overshoot. */
  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    return MovingBand.processor(
        audio,
        design(audio.context()),
        MovingBandDesign.Shape.HIGH_SHELF,
        audio.context().frequency("cutoff"),
        new QualityFactor(Math.sqrt(0.5)));
  }
}
