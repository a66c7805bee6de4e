package chainwright.dsp.filter;

/**
 * Where the quotient of two quadratics is highest, as squared magnitudes of sections are in {@code
 * sin^2(w/2)}, {@code tan^2(w/2)} or {@code f^2}: at an end, or where its derivative is 0.
 */
final class QuadraticRatio {

  private QuadraticRatio() {}

  /**
   * Returns the highest value of {@code (n2 y^2 + n1 y + n0) / (d2 y^2 + d1 y + d0)} for y from 0
   * to an end, which may be infinite.
   */
  static double highest(
      double n0, double n1, double n2, double d0, double d1, double d2, double end) {
    double atEnd = end == Double.POSITIVE_INFINITY ? n2 / d2 : at(n0, n1, n2, d0, d1, d2, end);
    double highest = Math.max(n0 / d0, atEnd);
    double half = n2 * d0 - n0 * d2;
    double constant = n1 * d0 - n0 * d1;
    double root = Math.sqrt(half * half - (n2 * d1 - n1 * d2) * constant);
    // The two roots in the form that loses no digits; NaN, where there are none, lies outside.
    double sum = -(half + Math.copySign(root, half));
    for (double y : new double[] {sum / (n2 * d1 - n1 * d2), constant / sum}) {
      if (y > 0 && y < end) {
        highest = Math.max(highest, at(n0, n1, n2, d0, d1, d2, y));
      }
    }
    return highest;
  }

  /**
   * Returns the highest squared magnitude of {@code (n0 + n1 s + n2 s^2) / (d0 + d1 s + d2 s^2)}
   * over all {@code s = j f}.
   */
  static double highestMagnitudeSquared(
      double n0, double n1, double n2, double d0, double d1, double d2) {
    return highest(
        n0 * n0,
        n1 * n1 - 2 * n0 * n2,
        n2 * n2,
        d0 * d0,
        d1 * d1 - 2 * d0 * d2,
        d2 * d2,
        Double.POSITIVE_INFINITY);
  }

  private static double at(
      double n0, double n1, double n2, double d0, double d1, double d2, double y) {
    return ((n2 * y + n1) * y + n0) / ((d2 * y + d1) * y + d0);
  }
}
