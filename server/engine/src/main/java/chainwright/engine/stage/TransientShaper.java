package chainwright.engine.stage;

import chainwright.dsp.dynamics.LevelControlDesign;
import chainwright.dsp.dynamics.TransientShaperDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code transient-shaper}: no change. A steady sound passes at every level; what it does
 * to beginnings and tails is neither a response nor a static curve.
 */
public final class TransientShaper implements StageModel {

  /** Makes the model, which has no state. */
  public TransientShaper() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return Optional.of(
        LevelControlDesign.of(
            new TransientShaperDesign(context.number("onset"), context.number("tail")),
            context.rate(),
            audio.key()));
  }
}
