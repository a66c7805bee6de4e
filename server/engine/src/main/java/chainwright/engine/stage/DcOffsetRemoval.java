package chainwright.engine.stage;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.CorrectiveFilters;

/** Designs {@code dc-offset-removal}: a high-pass of 6 dB/oct, at 3 Hz unless written. */
public final class DcOffsetRemoval implements LinearStage {

  /** Makes the model, which has no state. */
  public DcOffsetRemoval() {}

  @Override
  public StageSound design(StageContext context) {
    AnaloguePrototype prototype = CorrectiveFilters.offsetRemoval(context.frequency("cutoff"));
    return StageSound.ofFilter(context.curve().designLater(prototype, context.rate()), prototype);
  }
}
