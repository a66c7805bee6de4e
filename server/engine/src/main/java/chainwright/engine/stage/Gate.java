package chainwright.engine.stage;

import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.GateCurve;
import chainwright.dsp.dynamics.GateDesign;
import chainwright.dsp.dynamics.LevelControlDesign;
import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * Designs {@code gate}: 12 dB of range, 4 dB of hysteresis, 1 ms to open, 60 ms of hold and 150 ms
 * to close unless the settings say otherwise. Its detector follows peaks. The response is that of
 * the open gate; the look-ahead is 1 ms unless written.
 */
public final class Gate implements StageModel {

  /** Makes the model, which has no state. */
  public Gate() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.ofGate(
        new GateDesign(
            GateCurve.of(
                context.number("threshold"), context.number("range"), context.number("hysteresis")),
            new Detector.Peak(),
            context.number("attack"),
            context.number("hold"),
            context.number("release")));
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    StageContext context = audio.context();
    return design(context)
        .gate()
        .map(
            gate ->
                new LevelControlDesign(
                    gate, context.rate(), audio.key(), 1, context.frames("look-ahead")));
  }
}
