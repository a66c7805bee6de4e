package chainwright.engine.stage;

import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.GateCurve;
import chainwright.dsp.dynamics.GateDesign;
import chainwright.dsp.dynamics.LevelControlDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.quantity.SampleRate;
import java.util.Optional;

/**
 * Designs {@code expander}: 1:1.5 with a knee of 6 dB down to a range of 6 dB, 3 ms to open and 200
 * ms to close unless the settings say otherwise. Its detector follows peaks; it has neither
 * hysteresis nor hold. The response is that above the threshold.
 */
public final class Expander implements StageModel {

  /** Makes the model, which has no state. */
  public Expander() {}

  @Override
  public StageSound design(StageContext context) {
    return StageSound.ofGate(
        new GateDesign(
            new GateCurve(
                context.number("threshold"),
                context.number("ratio"),
                context.number("knee"),
                context.number("range"),
                0),
            new Detector.Peak(),
            context.number("attack"),
            0,
            context.number("release")));
  }

  @Override
  public Optional<ProcessorDesign> processor(StageAudio audio) {
    SampleRate rate = audio.context().rate();
    return design(audio.context())
        .gate()
        .map(gate -> LevelControlDesign.of(gate, rate, audio.key()));
  }
}
