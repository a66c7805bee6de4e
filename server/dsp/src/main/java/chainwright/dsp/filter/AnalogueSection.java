package chainwright.dsp.filter;

import chainwright.quantity.Frequency;
import java.util.stream.DoubleStream;

/**
 * One section of an analogue filter, of second order at most, in the frequency relative to its
 * corner.
 *
 * <pre>{@code
 *        n0 + n1 s + n2 s^2
 * H(s) = ------------------,   s = j f / corner
 *        d0 + d1 s + d2 s^2
 * }</pre>
 *
 * @param corner the frequency that {@code s} is relative to, above 0 Hz
 * @param n0 the numerator at 0 Hz, finite
 * @param n1 the numerator's first-order coefficient, finite
 * @param n2 the numerator's second-order coefficient, finite
 * @param d0 the denominator at 0 Hz, above 0
 * @param d1 the denominator's first-order coefficient, above 0
 * @param d2 the denominator's second-order coefficient, 0 or more
 */
public record AnalogueSection(
    Frequency corner, double n0, double n1, double n2, double d0, double d1, double d2) {

  /** Less narrow ones are drawn well by points a thirtieth of an octave apart. */
  private static final double LEAST_NARROW_Q = 3;

  /** Where a narrow shape is looked at, in halves of its width from its centre. */
  private static final double[] FLANKS = {-4, -2, -1, -0.5, -0.25, 0, 0.25, 0.5, 1, 2, 4};

  private static final double LEAST_MODERATE_HZ = 1e-6;
  private static final double MOST_MODERATE = 1e12;

  /**
   * Checks the values.
   *
   * @param corner the frequency that {@code s} is relative to
   * @param n0 the numerator at 0 Hz
   * @param n1 the numerator's first-order coefficient
   * @param n2 the numerator's second-order coefficient
   * @param d0 the denominator at 0 Hz
   * @param d1 the denominator's first-order coefficient
   * @param d2 the denominator's second-order coefficient
   * @throws IllegalArgumentException if the corner is 0 Hz, a numerator's coefficient is not
   *     finite, or the denominator is not that of a stable filter
   */
  public AnalogueSection {
    if (!(corner.hertz() > 0)) {
      throw new IllegalArgumentException("the frequency must be above 0 Hz, but was " + corner);
    }
    if (!Double.isFinite(n0 + n1 + n2)) {
      throw new IllegalArgumentException(
          "the numerator must be finite, but was " + n0 + ", " + n1 + ", " + n2);
    }
    if (!(d0 > 0 && d1 > 0 && d2 >= 0 && Double.isFinite(d0 + d1 + d2))) {
      throw new IllegalArgumentException(
          "the denominator must be positive, but was " + d0 + ", " + d1 + ", " + d2);
    }
  }

  /** Returns the centres of narrow poles and zeros, and points on their flanks [Hz]. */
  DoubleStream narrowHertz() {
    return DoubleStream.concat(narrowHertz(n0, n1, n2), narrowHertz(d0, d1, d2));
  }

  private DoubleStream narrowHertz(double c0, double c1, double c2) {
    if (!(c0 > 0 && c2 > 0 && Math.sqrt(c0 * c2) >= LEAST_NARROW_Q * Math.abs(c1))) {
      return DoubleStream.empty();
    }
    double centreHz = corner.hertz() * Math.sqrt(c0 / c2);
    double half = Math.abs(c1) / (2 * Math.sqrt(c0 * c2));
    return DoubleStream.of(FLANKS).map(flank -> centreHz * Math.exp(flank * half));
  }

  /**
   * Asks whether this section is of first order.
   *
   * @return whether neither polynomial has a term in {@code s^2}
   */
  public boolean isFirstOrder() {
    return n2 == 0 && d2 == 0;
  }

  /**
   * Asks whether the numbers are of sizes that somebody could mean, far from where products of them
   * overflow or vanish.
   *
   * @return whether the corner is at least a millionth of a hertz, and every coefficient that is
   *     not 0 lies between a trillionth and a trillion
   */
  boolean isModerate() {
    return corner.hertz() >= LEAST_MODERATE_HZ
        && isModerate(n0)
        && isModerate(n1)
        && isModerate(n2)
        && isModerate(d0)
        && isModerate(d1)
        && isModerate(d2);
  }

  private static boolean isModerate(double coefficient) {
    double size = Math.abs(coefficient);
    return size == 0 || (size >= 1 / MOST_MODERATE && size <= MOST_MODERATE);
  }

  /**
   * Returns the square of the magnitude at a frequency.
   *
   * @param hertz the frequency [Hz], 0 or more
   * @return the squared magnitude, no unit
   */
  public double magnitudeSquaredAt(double hertz) {
    double f = hertz / corner.hertz();
    double square = f * f;
    double numerator = n0 - n2 * square;
    double denominator = d0 - d2 * square;
    return (numerator * numerator + n1 * n1 * square)
        / (denominator * denominator + d1 * d1 * square);
  }
}
