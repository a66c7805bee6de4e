package chainwright.dsp.signal;

import java.util.Arrays;

/** Makes one frame of each two frames of one channel, by a {@link TwofoldFilter}. */
final class RateLowerer {

  private final int kept;
  private final int middle;
  private final int waiting;
  private final SymmetricFilter even;
  private final double[] past;

  /**
   * Makes one that has heard silence.
   *
   * @param filter the filter
   * @param waiting how many frames of the double rate it is later than the filter alone
   * @param longest the most frames of the lower rate at once
   */
  RateLowerer(TwofoldFilter filter, int waiting, int longest) {
    middle = filter.latencyFrames();
    this.waiting = waiting;
    kept = 2 * middle + waiting;
    even = new SymmetricFilter(filter.taps(), 1, 2, 1);
    past = new double[kept + 2 * longest];
  }

  /**
   * Takes frames of the double rate and writes half as many, which must be another array.
   *
   * @param x the frames
   * @param out receives half as many
   * @param count how many those are
   */
  void process(double[] x, double[] out, int count) {
    System.arraycopy(x, 0, past, kept, 2 * count);
    int first = kept - waiting;
    even.process(past, first, out, count);
    for (int i = 0; i < count; i++) {
      out[i] += past[first + 2 * i - middle] / 2;
    }
    System.arraycopy(past, 2 * count, past, 0, kept);
  }

  void reset() {
    Arrays.fill(past, 0);
  }
}
