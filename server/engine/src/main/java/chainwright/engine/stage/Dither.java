package chainwright.engine.stage;

import chainwright.dsp.signal.DitherDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code dither}: no change. At rest it passes the signal; what it adds is not a response
 * but noise.
 */
public final class Dither implements StageModel {

  /** Makes the model, which has no state. */
  public Dither() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }

  /** The noise begins alike every time, so that a text and a recording have one result. */
  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return Optional.of(
        new DitherDesign(
            (int) context.number("word-length"),
            context.number("dither-level"),
            shape(context),
            0));
  }

  private static DitherDesign.Shape shape(StageContext context) {
    if (context.is("noise-shaping", "first-order")) {
      return DitherDesign.Shape.FIRST_ORDER;
    }
    return context.is("noise-shaping", "second-order")
        ? DitherDesign.Shape.SECOND_ORDER
        : DitherDesign.Shape.FLAT;
  }
}
