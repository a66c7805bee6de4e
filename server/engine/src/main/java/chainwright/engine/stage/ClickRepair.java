package chainwright.engine.stage;

import chainwright.dsp.repair.ClickRepairDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code click-repair}: clicks of up to 2 ms unless written. At rest it passes the signal;
 * it acts on single clicks only.
 */
public final class ClickRepair implements StageModel {

  /** Makes the model, which has no state. */
  public ClickRepair() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return Optional.of(new ClickRepairDesign(context.rate(), context.number("max-length")));
  }
}
