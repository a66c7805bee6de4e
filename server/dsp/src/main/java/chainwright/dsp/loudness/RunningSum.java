package chainwright.dsp.loudness;

/**
 * A sum of very many numbers that keeps what rounding takes away.
 *
 * <p>Source: W. Kahan, Further remarks on reducing truncation errors, Communications of the ACM
 * 8(1), 1965, in the form by A. Neumaier, 1974 (from memory).
 */
final class RunningSum {

  private double sum;
  private double lost;

  void add(double value) {
    double next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? (sum - next) + value : (value - next) + sum;
    sum = next;
  }

  /** Returns the sum with one more number, without adding it. */
  double plus(double value) {
    return sum + (lost + value);
  }

  void reset() {
    sum = 0;
    lost = 0;
  }
}
