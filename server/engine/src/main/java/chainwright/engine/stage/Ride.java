package chainwright.engine.stage;

import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.PassageDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.notation.model.Value;
import java.util.Optional;

/**
 * Designs {@code ride}: nothing outside its passage, and the response of a chain is that outside
 * passages.
 */
public final class Ride implements StageModel {

  /** Makes the model, which has no state. */
  public Ride() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING;
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    Value.Span time = context.span("time");
    return Optional.of(
        new PassageDesign(
            FactorDesign.ofGainDb(context.number("gain")),
            audio.frameAt(time.low().baseValue()),
            audio.frameAt(time.high().baseValue()),
            context.frames("fade")));
  }
}
