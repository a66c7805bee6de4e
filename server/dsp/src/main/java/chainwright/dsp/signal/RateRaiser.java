package chainwright.dsp.signal;

import java.util.Arrays;

/** Makes two frames of each frame of one channel, by a {@link TwofoldFilter}. */
final class RateRaiser {

  private final int kept;
  private final SymmetricFilter even;
  private final SymmetricFilter odd;
  private final double[] past;

  /**
   * Starts with silence.
   *
   * @param longest the most frames of the lower rate at once
   */
  RateRaiser(TwofoldFilter filter, int longest) {
    kept = filter.pastFrames();
    even = filter.newEvenFilter(2);
    odd = filter.newOddFilter(2);
    past = new double[kept + longest];
  }

  /** Takes frames of the lower rate and writes twice as many, which must be another array. */
  void process(double[] x, double[] out, int count) {
    System.arraycopy(x, 0, past, kept, count);
    even.process(past, kept, out, 0, 2, count);
    odd.process(past, kept, out, 1, 2, count);
    System.arraycopy(past, count, past, 0, kept);
  }

  void reset() {
    Arrays.fill(past, 0);
  }
}
