package chainwright.engine.mix;

import chainwright.dsp.signal.DelayLine;
import java.util.Arrays;

/** A feed at work: puts a sound into the channels of a bus, at its level and in time. */
public final class FeedRun {

  private final double factor;
  private final int channelCount;
  private final DelayLine line;

  /**
   * Starts a feed.
   *
   * @param feed the feed
   * @param channelCount how many channels the bus has
   */
  public FeedRun(MixFeed feed, int channelCount) {
    factor = feed.factor();
    this.channelCount = channelCount;
    line = new DelayLine(channelCount, feed.delayFrames());
  }

  /**
   * Passes a block on.
   *
   * @param sound the next block of what the source puts out, [channel][frame]
   * @param into receives what comes to the bus, [channel][frame], from index 0
   * @param count how many frames
   */
  public void process(double[][] sound, double[][] into, int count) {
    place(sound, into, count);
    for (int c = 0; c < channelCount; c++) {
      for (int i = 0; i < count; i++) {
        into[c][i] *= factor;
      }
    }
    line.process(into, 0, count);
  }

  /**
   * Puts a sound into as many channels or more: each into its own, a single one into the first two.
   */
  static void place(double[][] sound, double[][] into, int count) {
    for (int c = 0; c < into.length; c++) {
      boolean isDoubled = sound.length == 1 && c == 1;
      if (c < sound.length || isDoubled) {
        System.arraycopy(sound[isDoubled ? 0 : c], 0, into[c], 0, count);
      } else {
        Arrays.fill(into[c], 0, count, 0);
      }
    }
  }
}
