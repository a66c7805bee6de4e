package chainwright.dsp.repair;

/**
 * The exponential integral E1(x) = ∫ e^(−t) / t dt from x to infinity.
 *
 * <p>Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 5.1.11 (series) and
 * 5.1.22 (continued fraction); from memory.
 */
final class ExponentialIntegral {

  private static final double EULER = 0.5772156649015329;

  private ExponentialIntegral() {}

  /** Returns E1 of a number above 0, within 1e-13 of its value. */
  static double of(double x) {
    return x <= 1 ? series(x) : fraction(x);
  }

  private static double series(double x) {
    double sum = -EULER - Math.log(x);
    double term = -1;
    for (int n = 1; n < 30; n++) {
      term *= -x / n;
      sum += term / n;
    }
    return sum;
  }

  /** e^(−x) / (x + 1 − 1/(x + 3 − 4/(x + 5 − …))), evaluated from below. */
  private static double fraction(double x) {
    double below = 0;
    // The nearer x lies to 1, the slower it converges.
    for (int n = (int) (12 + 70 / x); n >= 1; n--) {
      below = (double) n * n / (x + 2 * n + 1 - below);
    }
    return Math.exp(-x) / (x + 1 - below);
  }
}
