package chainwright.engine.mix;

import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.PathSound;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A chain or bus of a mix. A node's frames are counted from the start of all takes; what is meant
 * for frame t comes in at frame t + {@link #arrivalFrames} and goes out at t + {@link
 * #latencyFrames}.
 *
 * @param path what happens in it
 * @param take the recording that it sounds of, if it has one
 * @param feeds what comes to it from others
 * @param keys the indices of the nodes that its detectors listen to, by name
 * @param channelCount how many channels it processes and puts out
 * @param sound what processes its audio
 * @param arrivalFrames how late everything is when it comes in [frames]
 * @param endFrame where its sound ends, what goes on sounding included [frames]
 */
public record MixNode(
    SignalPath path,
    Optional<MixTake> take,
    List<MixFeed> feeds,
    Map<String, Integer> keys,
    int channelCount,
    PathSound sound,
    int arrivalFrames,
    long endFrame) {

  /**
   * Copies the collections.
   *
   * @param path what happens in it
   * @param take its recording
   * @param feeds what comes to it
   * @param keys what its detectors listen to
   * @param channelCount how many channels it has
   * @param sound what processes its audio
   * @param arrivalFrames how late everything comes in [frames]
   * @param endFrame where its sound ends [frames]
   */
  public MixNode {
    feeds = List.copyOf(feeds);
    keys = Map.copyOf(keys);
  }

  /**
   * Returns its name.
   *
   * @return the name of the chain or bus
   */
  public String name() {
    return path.track().name().text();
  }

  /**
   * Returns how late its output is.
   *
   * @return the latency of everything on the way to it and in it [frames]
   */
  public int latencyFrames() {
    return arrivalFrames + sound.processor().latencyFrames();
  }
}
