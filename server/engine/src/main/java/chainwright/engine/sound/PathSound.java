package chainwright.engine.sound;

import chainwright.dsp.signal.ProcessorDesign;
import chainwright.engine.path.PathElement.StageElement;
import java.util.List;

/**
 * What processes the audio of a path.
 *
 * @param processor the whole of it as one
 * @param silentStages the stages that it leaves out, since their kind is not processed yet or their
 *     settings allow no design; with any of them the sound is not that of the text
 */
public record PathSound(ProcessorDesign processor, List<StageElement> silentStages) {

  /**
   * Copies the list.
   *
   * @param processor the whole as one
   * @param silentStages the stages that it leaves out
   */
  public PathSound {
    silentStages = List.copyOf(silentStages);
  }
}
