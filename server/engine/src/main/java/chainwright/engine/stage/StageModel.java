package chainwright.engine.stage;

import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs the stages of one kind. An implementation has no state and a constructor without
 * parameters.
 */
public interface StageModel {

  /**
   * Designs a stage.
   *
   * @param context its settings and where it stands
   * @return what it does to a signal
   * @throws IllegalArgumentException if its settings allow no design, such as a cutoff above half
   *     the sample rate
   */
  StageSound design(StageContext context);

  /**
   * Designs what processes the audio of a stage.
   *
   * @param audio its settings, where it stands and what its detector hears
   * @return the processor's design; empty for a kind whose audio is not processed yet
   * @throws IllegalArgumentException if its settings allow no design
   */
  default Optional<ProcessorDesign> processor(StageAudio audio) {
    return Optional.empty();
  }
}
