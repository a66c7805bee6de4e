package chainwright.engine.stage;

import chainwright.dsp.signal.ProcessorDesign;
import java.util.Optional;

/**
 * What a stage has to know, besides its settings, to process audio.
 *
 * @param context its settings and where it stands
 * @param keyFilter what the signal passes on its way to the detector; empty if nothing
 * @param latencyFrames how late the signal is when it comes to the stage [frames], ≥ 0; for what
 *     happens at a time of the recording
 */
public record StageAudio(
    StageContext context, Optional<ProcessorDesign> keyFilter, int latencyFrames) {

  /**
   * Returns the frame that is at the stage at a time of the recording.
   *
   * @param seconds the time since the start of the signal [s]
   * @return the nearest frame
   */
  public long frameAt(double seconds) {
    return Math.round(seconds * context.rate().hertz()) + latencyFrames;
  }
}
