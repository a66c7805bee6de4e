package chainwright.engine.sound;

import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.engine.path.PathElement.StageElement;
import java.util.List;

/**
 * What processes the audio of a path.
 *
 * @param body all of it but a dither at its end
 * @param ending the dither at its end; nothing where there is none
 * @param silentStages the stages that it leaves out, since their kind is not processed yet or their
 *     settings allow no design; with any of them the sound is not that of the text
 */
public record PathSound(
    ProcessorDesign body, ProcessorDesign ending, List<StageElement> silentStages) {

  /**
   * Copies the list.
   *
   * @param body all of it but a dither at its end
   * @param ending the dither at its end
   * @param silentStages the stages that it leaves out
   */
  public PathSound {
    silentStages = List.copyOf(silentStages);
  }

  /**
   * Returns the whole of it as one.
   *
   * @return the design
   */
  public ProcessorDesign processor() {
    return processor(0);
  }

  /**
   * Returns the whole of it with a gain. The gain stands before the dither, which must be the last
   * to change the samples: only then they keep to the steps of the word that it is made for.
   *
   * @param gainDb the gain [dB], finite
   * @return the design
   */
  public ProcessorDesign processor(double gainDb) {
    return new SeriesDesign(List.of(body, FactorDesign.ofGainDb(gainDb), ending));
  }
}
