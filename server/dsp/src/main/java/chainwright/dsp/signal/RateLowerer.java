package chainwright.dsp.signal;

import java.util.Arrays;

/** Makes one frame of each two frames of one channel, by a {@link TwofoldFilter}. */
final class RateLowerer {

  private final TwofoldFilter filter;
  private final double[] evens;
  private final double[] odds;
  private final double[] work;

  /**
   * Starts with silence.
   *
   * @param longest the most frames of the lower rate at once
   */
  RateLowerer(TwofoldFilter filter, int longest) {
    this.filter = filter;
    evens = new double[filter.pastFrames() + longest];
    odds = new double[filter.pastFrames() + longest];
    work = new double[longest];
  }

  /** Takes frames of the double rate and writes half as many, which must be another array. */
  void process(double[] x, double[] out, int count) {
    int kept = filter.pastFrames();
    for (int i = 0; i < count; i++) {
      evens[kept + i] = x[2 * i];
      odds[kept + i] = x[2 * i + 1];
    }
    filter.lower(evens, odds, out, work, count);
    System.arraycopy(evens, count, evens, 0, kept);
    System.arraycopy(odds, count, odds, 0, kept);
  }

  void reset() {
    Arrays.fill(evens, 0);
    Arrays.fill(odds, 0);
  }
}
