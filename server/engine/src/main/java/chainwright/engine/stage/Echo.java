package chainwright.engine.stage;

import chainwright.dsp.reverb.EchoDesign;
import chainwright.dsp.signal.GuardedDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SumDesign;
import chainwright.quantity.Frequency;
import java.util.Optional;

/**
 * Designs {@code echo}: 15 % of feedback and no damping unless written; its time is that of the
 * nearest whole number of samples.
 *
 * <p>The response is that of the sound as it came in: no change. The repeats are no response but a
 * decay.
 */
public final class Echo implements StageModel {

  /** Makes the model, which has no state. */
  public Echo() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.NOTHING.withDecay(decay(context));
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    RepeatsDecay decay = decay(audio.context());
    return Optional.of(SumDesign.ofBlend(new GuardedDesign(decay.echo()), decay.blendShare()));
  }

  private static RepeatsDecay decay(StageContext context) {
    EchoDesign echo =
        new EchoDesign(
            Math.max(1, context.frames("time")),
            context.number("feedback") / 100,
            context.settings().number("damping").map(Frequency::ofHertz),
            context.rate());
    return new RepeatsDecay(echo, context.number("blend") / 100);
  }
}
