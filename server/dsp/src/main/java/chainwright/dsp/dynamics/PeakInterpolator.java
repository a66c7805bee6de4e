package chainwright.dsp.dynamics;

import chainwright.dsp.signal.KaiserWindow;

/**
 * The places between neighbouring samples, by a sinc of 64 samples under a Kaiser window: flat
 * within 0.001 dB up to 0.45 of the sample rate.
 */
final class PeakInterpolator {

  /** How many samples before the nearest earlier one are used; one more is used after it. */
  static final int REACH = 31;

  static final int TAPS = 2 * (REACH + 1);

  /** Side lobes of the filter lie near −80 dB. */
  private static final KaiserWindow WINDOW = new KaiserWindow(8);

  private final int factor;

  /** The weights of each place, one row after the other. */
  private final double[] weights;

  private final double largestGain;

  /**
   * Designs the weights.
   *
   * @param factor how many places there are from one sample to the next, the sample included; ≥ 2
   */
  PeakInterpolator(int factor) {
    this.factor = factor;
    weights = new double[factor * TAPS];
    double largest = 1;
    weights[REACH] = 1;
    for (int place = 1; place < factor; place++) {
      double sum = 0;
      for (int tap = 0; tap < TAPS; tap++) {
        double distance = tap - REACH - place / (double) factor;
        double sinc = Math.sin(Math.PI * distance) / (Math.PI * distance);
        double weight = sinc * WINDOW.at(distance / (REACH + 1));
        weights[place * TAPS + tap] = weight;
        sum += Math.abs(weight);
      }
      largest = Math.max(largest, sum);
    }
    largestGain = largest;
  }

  int factor() {
    return factor;
  }

  /** Returns by how much a place can exceed the largest of its samples, as a factor. */
  double largestGain() {
    return largestGain;
  }

  /**
   * Returns the signal at a place.
   *
   * @param x the samples, of which 31 before and 32 after the one at {@code sample} are read
   * @param place how many places after that sample, from 0 to before the factor
   */
  double at(double[] x, int sample, int place) {
    if (place == 0) {
      return x[sample];
    }
    int row = place * TAPS;
    int first = sample - REACH;
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    for (int tap = 0; tap < TAPS; tap += 4) {
      a += weights[row + tap] * x[first + tap];
      b += weights[row + tap + 1] * x[first + tap + 1];
      c += weights[row + tap + 2] * x[first + tap + 2];
      d += weights[row + tap + 3] * x[first + tap + 3];
    }
    return (a + b) + (c + d);
  }
}
