package chainwright.engine.stage;

import chainwright.dsp.reverb.DecayTimes;
import chainwright.dsp.reverb.ReverbDesign;
import chainwright.dsp.signal.GuardedDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SumDesign;
import java.util.Optional;

/**
 * Designs {@code reverb}: 1.4 s after 20 ms, 1.1 times as long at 125 Hz and 0.7 times at 4 kHz
 * unless written.
 *
 * <p>The response is that of the sound as it came in: no change. What is added is no response but a
 * decay.
 */
public final class Reverb implements StageModel {

  /** Makes the model, which has no state. */
  public Reverb() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING.withDecay(decay(context));
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    RoomDecay decay = decay(audio.context());
    return Optional.of(SumDesign.ofBlend(new GuardedDesign(decay.room()), decay.blendShare()));
  }

  private static RoomDecay decay(StageContext context) {
    DecayTimes times =
        new DecayTimes(
            context.number("decay"), context.number("bass-ratio"), context.number("treble-ratio"));
    return new RoomDecay(
        new ReverbDesign(times, context.frames("pre-delay"), context.rate().hertz()),
        context.number("blend") / 100);
  }
}
