package chainwright.engine.stage;

import chainwright.dsp.repair.PlosiveRepairDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code plosive-repair}: thumps below 150 Hz of up to 80 ms, by at most 12 dB, unless
 * written. At rest it passes the signal; it acts on single thumps only.
 */
public final class PlosiveRepair implements StageModel {

  /** Makes the model, which has no state. */
  public PlosiveRepair() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return Optional.of(
        new PlosiveRepairDesign(
            context.rate(),
            context.number("reduction"),
            context.number("max-length"),
            context.number("below")));
  }
}
