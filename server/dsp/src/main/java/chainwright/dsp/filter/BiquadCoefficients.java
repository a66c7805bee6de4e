package chainwright.dsp.filter;

/**
 * The coefficients of one second-order section, scaled so that {@code a0} is 1.
 *
 * <pre>{@code
 *        b0 + b1 z^-1 + b2 z^-2
 * H(z) = ----------------------
 *         1 + a1 z^-1 + a2 z^-2
 * }</pre>
 *
 * <p>Sign: {@code a1} and {@code a2} stand in the denominator as written above, so that the
 * difference equation subtracts them. A section of first order has {@code b2 = a2 = 0}.
 *
 * @param b0 the numerator's coefficient of the present sample, finite
 * @param b1 the numerator's coefficient of the sample before, finite
 * @param b2 the numerator's coefficient of the sample before that, finite
 * @param a1 the denominator's coefficient of the sample before, finite
 * @param a2 the denominator's coefficient of the sample before that, finite
 */
public record BiquadCoefficients(double b0, double b1, double b2, double a1, double a2) {

  /*
   * Evaluation. With w in radians a sample, both polynomials are multiplied by e^(jw), which cancels
   * in their quotient and leaves
   *
   *   P(w) = (p0 + p2) cos w + p1  +  j (p0 - p2) sin w.
   *
   * For low corners at high rates the real part is a small difference of numbers near 2, so cos w is
   * written as 1 - 2 sin^2(w/2), which leaves (p0 + p1 + p2) - 2 (p0 + p2) sin^2(w/2); the sum in
   * front is exact because neighbouring terms nearly cancel. Near the Nyquist frequency the mirror
   * image, with cos^2(w/2), does the same for zeros at z = -1.
   */

  /**
   * Checks the values.
   *
   * @param b0 the numerator's coefficient of the present sample
   * @param b1 the numerator's coefficient of the sample before
   * @param b2 the numerator's coefficient of the sample before that
   * @param a1 the denominator's coefficient of the sample before
   * @param a2 the denominator's coefficient of the sample before that
   * @throws IllegalArgumentException if a coefficient is not finite
   */
  public BiquadCoefficients {
    if (!Double.isFinite(b0 + b1 + b2 + a1 + a2)) {
      throw new IllegalArgumentException(
          "the coefficients must be finite, but were b "
              + b0
              + ", "
              + b1
              + ", "
              + b2
              + " and a 1, "
              + a1
              + ", "
              + a2);
    }
  }

  /**
   * Returns this section with a gain behind it.
   *
   * @param factor the gain, no unit, finite
   * @return the section with its numerator multiplied
   */
  public BiquadCoefficients times(double factor) {
    return new BiquadCoefficients(factor * b0, factor * b1, factor * b2, a1, a2);
  }

  /**
   * Returns how far the farther pole lies from the centre of the z-plane.
   *
   * @return the radius; below 1 if the section is stable
   */
  public double poleRadius() {
    double middle = -a1 / 2;
    double apart = middle * middle - a2;
    return apart < 0 ? Math.sqrt(a2) : Math.abs(middle) + Math.sqrt(apart);
  }

  /**
   * Asks whether both poles lie inside the unit circle, so that the section comes to rest.
   *
   * @return whether the section is stable
   */
  public boolean isStable() {
    return isInsideUnitCircle(1, a1, a2);
  }

  /**
   * Asks whether both zeros lie inside the unit circle too, so that the section could be undone.
   *
   * @return whether the section is stable and has minimum phase; zeros on the circle do not count
   */
  public boolean isMinimumPhase() {
    return isStable() && b0 != 0 && isInsideUnitCircle(1, b1 / b0, b2 / b0);
  }

  /** Stability triangle, with each condition in the order of addition that is exact. */
  private static boolean isInsideUnitCircle(double p0, double p1, double p2) {
    return (p0 + p1) + p2 > 0 && (p0 - p1) + p2 > 0 && Math.abs(p2) < p0;
  }

  /*
   * The highest magnitude. With y = sin^2(w/2), from 0 to 1, the squared magnitude of a polynomial is
   *
   *   |P|^2 = (p0 + p1 + p2)^2 + 4 ((p0 - p2)^2 - (p0 + p1 + p2) (p0 + p2)) y + 16 p0 p2 y^2,
   */

  /** Returns the square of the largest magnitude between 0 Hz and half the rate. */
  double highestMagnitudeSquared() {
    double n0 = square((b0 + b1) + b2);
    double n1 = 4 * (square(b0 - b2) - ((b0 + b1) + b2) * (b0 + b2));
    double n2 = 16 * b0 * b2;
    double d0 = square((1 + a1) + a2);
    double d1 = 4 * (square(1 - a2) - ((1 + a1) + a2) * (1 + a2));
    double d2 = 16 * a2;
    return QuadraticRatio.highest(n0, n1, n2, d0, d1, d2, 1);
  }

  private static double square(double x) {
    return x * x;
  }

  double numeratorReal(double sineSquared, double cosineSquared) {
    return real(b0, b1, b2, sineSquared, cosineSquared);
  }

  double denominatorReal(double sineSquared, double cosineSquared) {
    return real(1, a1, a2, sineSquared, cosineSquared);
  }

  double numeratorImaginary(double sine) {
    return (b0 - b2) * sine;
  }

  double denominatorImaginary(double sine) {
    return (1 - a2) * sine;
  }

  double numeratorRealSlope(double sine) {
    return -(b0 + b2) * sine;
  }

  double denominatorRealSlope(double sine) {
    return -(1 + a2) * sine;
  }

  /** Real part of {@code e^(jw) P}, from the squared sine and cosine of half the angle. */
  private static double real(
      double p0, double p1, double p2, double sineSquared, double cosineSquared) {
    return sineSquared <= cosineSquared
        ? ((p0 + p1) + p2) - 2 * (p0 + p2) * sineSquared
        : 2 * (p0 + p2) * cosineSquared - ((p0 - p1) + p2);
  }
}
