package chainwright.engine.sound;

import chainwright.dsp.signal.ProcessorDesign;
import chainwright.engine.path.PathElement.StageElement;

/** Gets to know each stage that is made to sound, and may put something around it that listens. */
@FunctionalInterface
public interface StageTap {

  /** Listens to nothing. */
  StageTap NONE = (stage, design) -> design;

  /**
   * Returns what stands in the stage's place.
   *
   * @param stage the stage
   * @param design what processes its audio
   * @return a design with the same output and latency
   */
  ProcessorDesign tap(StageElement stage, ProcessorDesign design);
}
