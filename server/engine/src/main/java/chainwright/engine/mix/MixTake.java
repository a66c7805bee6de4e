package chainwright.engine.mix;

import java.util.OptionalLong;

/**
 * The recording that a chain sounds of.
 *
 * @param channelCount how many channels it has, ≥ 1
 * @param frames how long it is [frames], ≥ 0
 * @param fromFrame the first frame that is meant, counted from its start
 * @param toFrame the frame after the last that is meant; empty for its end
 */
public record MixTake(int channelCount, long frames, long fromFrame, OptionalLong toFrame) {

  /**
   * Returns where the part that is meant ends; what the chain makes of it sounds on after that.
   *
   * @return the frame after its last [frames]
   */
  public long endFrame() {
    return toFrame.orElse(frames);
  }
}
