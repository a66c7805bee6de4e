package chainwright.engine.stage;

import chainwright.dsp.signal.PanDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code pan}: no change. The position and the law are gains of the two channels against
 * each other; the response is that of the sound before it is placed.
 */
public final class Pan implements StageModel {

  /** Makes the model, which has no state. */
  public Pan() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return Optional.of(
        new PanDesign(context.number("position") / 100, context.number("law"), audio.isMono()));
  }
}
