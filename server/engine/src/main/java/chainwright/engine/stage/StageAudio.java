package chainwright.engine.stage;

import chainwright.dsp.dynamics.KeyInput;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.notation.model.Value;
import java.util.List;
import java.util.Optional;

/**
 * What a stage has to know, besides its settings, to process audio.
 *
 * @param context its settings and where it stands
 * @param keyFilter what the signal passes on its way to the detector; empty if nothing
 * @param latencyFrames how late the signal is when it comes to the stage [frames], ≥ 0; for what
 *     happens at a time of the recording
 * @param isMono whether all channels hold the same sound, that of a recording of one channel
 */
public record StageAudio(
    StageContext context, Optional<ProcessorDesign> keyFilter, int latencyFrames, boolean isMono) {

  /**
   * Returns the frame that is at the stage at a time of the recording.
   *
   * @param seconds the time since the start of the signal [s]
   * @return the nearest frame
   */
  public long frameAt(double seconds) {
    return Math.round(seconds * context.rate().hertz()) + latencyFrames;
  }

  /**
   * Returns what the detector listens to: the signal that {@code key} names, or the stage's own,
   * through the side chain.
   *
   * @return the input
   */
  public KeyInput key() {
    return new KeyInput(
        context
            .settings()
            .value("key")
            .filter(Value.Reference.class::isInstance)
            .map(value -> ((Value.Reference) value).name()),
        latencyFrames,
        keyFilter);
  }

  /**
   * Returns what the detector listens to, followed by what the stage has before its detector.
   *
   * @param last what comes after the side chain
   * @return the input
   */
  public KeyInput keyThrough(ProcessorDesign last) {
    KeyInput key = key();
    ProcessorDesign whole =
        key.filter()
            .<ProcessorDesign>map(filter -> new SeriesDesign(List.of(filter, last)))
            .orElse(last);
    return new KeyInput(key.signal(), key.latencyFrames(), Optional.of(whole));
  }
}
