package chainwright.dsp.signal;

import java.util.Arrays;

/** Makes two frames of each frame of one channel, by a {@link TwofoldFilter}. */
final class RateRaiser {

  private final TwofoldFilter filter;
  private final double[] past;

  /**
   * Starts with silence.
   *
   * @param longest the most frames of the lower rate at once
   */
  RateRaiser(TwofoldFilter filter, int longest) {
    this.filter = filter;
    past = new double[filter.pastFrames() + longest];
  }

  /** Takes frames of the lower rate and writes twice as many, which must be another array. */
  void process(double[] x, double[] out, int count) {
    int kept = filter.pastFrames();
    System.arraycopy(x, 0, past, kept, count);
    filter.raise(past, out, count);
    System.arraycopy(past, count, past, 0, kept);
  }

  void reset() {
    Arrays.fill(past, 0);
  }
}
