package chainwright.dsp.signal;

import java.util.Arrays;

/** Makes one frame of each two frames of one channel, by a {@link TwofoldFilter}. */
final class RateLowerer {

  private final int kept;
  private final SymmetricFilter even;
  private final SymmetricFilter odd;
  private final double[] evens;
  private final double[] odds;
  private final double[] work;

  /**
   * Starts with silence.
   *
   * @param longest the most frames of the lower rate at once
   */
  RateLowerer(TwofoldFilter filter, int longest) {
    kept = filter.pastFrames();
    even = filter.newEvenFilter(1);
    odd = filter.newOddFilter(1);
    evens = new double[kept + longest];
    odds = new double[kept + longest];
    work = new double[longest];
  }

  /** Takes frames of the double rate and writes half as many, which must be another array. */
  void process(double[] x, double[] out, int count) {
    for (int i = 0; i < count; i++) {
      evens[kept + i] = x[2 * i];
      odds[kept + i] = x[2 * i + 1];
    }
    even.process(evens, kept, out, 0, 1, count);
    odd.process(odds, kept - 1, work, 0, 1, count);
    for (int i = 0; i < count; i++) {
      out[i] += work[i];
    }
    System.arraycopy(evens, count, evens, 0, kept);
    System.arraycopy(odds, count, odds, 0, kept);
  }

  void reset() {
    Arrays.fill(evens, 0);
    Arrays.fill(odds, 0);
  }
}
