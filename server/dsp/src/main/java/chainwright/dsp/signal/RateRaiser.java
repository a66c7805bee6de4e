package chainwright.dsp.signal;

import java.util.Arrays;

/** Makes two frames of each frame of one channel, by a {@link TwofoldFilter}. */
final class RateRaiser {

  private final int kept;
  private final int middle;
  private final SymmetricFilter between;
  private final double[] past;

  /**
   * Makes one that has heard silence.
   *
   * @param filter the filter
   * @param longest the most frames of the lower rate at once
   */
  RateRaiser(TwofoldFilter filter, int longest) {
    kept = filter.latencyFrames();
    middle = kept / 2;
    between = new SymmetricFilter(filter.taps(), 2, 1, 2);
    past = new double[kept + longest];
  }

  /** Takes frames of the lower rate and writes twice as many, which must be another array. */
  void process(double[] x, double[] out, int count) {
    System.arraycopy(x, 0, past, kept, count);
    between.process(past, kept, out, count);
    for (int i = 0; i < count; i++) {
      out[2 * i + 1] = past[kept + i - middle];
    }
    System.arraycopy(past, count, past, 0, kept);
  }

  void reset() {
    Arrays.fill(past, 0);
  }
}
