package chainwright.app.render;

import java.io.IOException;
import java.util.Locale;

/**
 * Lets no sample through that no loudspeaker should get.
 *
 * @param who what a complaint begins with, such as "the take holds"
 * @param rateHz the sample rate [Hz]
 */
record SampleCheck(String who, double rateHz) {

  /**
   * Checks a block.
   *
   * @param block the samples, [channel][frame]
   * @param from the first frame
   * @param to the frame after the last
   * @param startFrame what time the frame 0 of the block is meant for [frames]
   * @throws IOException if a sample is infinite or no number
   */
  void check(double[][] block, int from, int to, long startFrame) throws IOException {
    for (double[] plane : block) {
      for (int i = from; i < to; i++) {
        if (!Double.isFinite(plane[i])) {
          throw new IOException(
              String.format(
                  Locale.ROOT,
                  "%s %s at %.3f s, which no loudspeaker should get; nothing was written",
                  who,
                  Double.isNaN(plane[i]) ? "a sample that is no number" : "an infinite sample",
                  Math.max(0, startFrame + i) / rateHz));
        }
      }
    }
  }
}
