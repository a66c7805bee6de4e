package chainwright.dsp.repair;

/**
 * The mean of the last values of a row, in constant time on average.
 *
 * <p>The sum is put together from that of the newest block of values and that of what is left of
 * the block before, so that nothing of a value stays once it has left the window, as it would if
 * values were added and taken away again.
 */
final class SlidingMean {

  private final int window;
  private final double start;
  private final double[] block;

  /** The sums of the block before from each of its places on. */
  private final double[] rest;

  private double sum;
  private int filled;

  /**
   * Starts with a row of equal values.
   *
   * @param window over how many values, the newest included; ≥ 1
   * @param start the value before the first
   */
  SlidingMean(int window, double start) {
    this.window = window;
    this.start = start;
    block = new double[window];
    rest = new double[window + 1];
    reset();
  }

  /** Takes a value and returns the mean of the window that ends with it. */
  double next(double value) {
    block[filled] = value;
    sum += value;
    filled++;
    double mean = (sum + rest[filled]) / window;
    if (filled == window) {
      for (int i = window - 1; i >= 0; i--) {
        rest[i] = rest[i + 1] + block[i];
      }
      filled = 0;
      sum = 0;
    }
    return mean;
  }

  void reset() {
    for (int i = 0; i <= window; i++) {
      rest[i] = (window - i) * start;
    }
    filled = 0;
    sum = 0;
  }
}
