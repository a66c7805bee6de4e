package chainwright.app.plot;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/** An immutable row of numbers, such as the gains of a curve; its unit is its owner's. */
public final class Samples {

  private final double[] values;

  private Samples(double[] values) {
    this.values = values;
  }

  /**
   * Returns a row with a copy of these values.
   *
   * @param values the values, any length; NaN and infinities are kept
   * @return the row
   */
  public static Samples of(double... values) {
    return new Samples(values.clone());
  }

  /**
   * Returns values in equal steps of the logarithm, such as 20, 200, 2000 and 20000.
   *
   * @param low the first value, greater than 0 and finite
   * @param high the last value, greater than {@code low} and finite
   * @param count how many values, 2 or more
   * @return the row, rising; its ends are exact
   * @throws IllegalArgumentException if a bound or the count is out of range
   */
  public static Samples ofLogSpaced(double low, double high, int count) {
    if (!(low > 0)) {
      throw new IllegalArgumentException(
          "the low end of a logarithmic row must lie above 0, but was " + low);
    }
    requireSpan(low, high, count);
    double ratio = Math.log(high / low);
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = low * Math.exp(ratio * i / (count - 1));
    }
    values[count - 1] = high;
    return new Samples(values);
  }

  /**
   * Returns values in equal steps, such as -60, -40, -20 and 0.
   *
   * @param low the first value, finite
   * @param high the last value, greater than {@code low} and finite
   * @param count how many values, 2 or more
   * @return the row, rising; its ends are exact
   * @throws IllegalArgumentException if a bound or the count is out of range
   */
  public static Samples ofEvenlySpaced(double low, double high, int count) {
    requireSpan(low, high, count);
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = low + (high - low) * i / (count - 1);
    }
    values[count - 1] = high;
    return new Samples(values);
  }

  /**
   * Returns how many values there are.
   *
   * @return the count, 0 or more
   */
  public int size() {
    return values.length;
  }

  /**
   * Returns one value.
   *
   * @param index its place, from 0
   * @return the value
   * @throws IndexOutOfBoundsException if there is no such place
   */
  public double get(int index) {
    return values[index];
  }

  /**
   * Returns a row of the same length with a function applied to each value.
   *
   * @param function gives the new value for an old one
   * @return the new row
   */
  public Samples map(DoubleUnaryOperator function) {
    return new Samples(Arrays.stream(values).map(function).toArray());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Samples that && Arrays.equals(values, that.values);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(values);
  }

  @Override
  public String toString() {
    return Arrays.toString(values);
  }

  private static void requireSpan(double low, double high, int count) {
    if (!(high > low) || Double.isInfinite(low) || Double.isInfinite(high)) {
      throw new IllegalArgumentException(
          "the ends of a row must be finite and rise, but were " + low + " and " + high);
    }
    if (count < 2) {
      throw new IllegalArgumentException(
          "a spaced row must have 2 values or more, but had " + count);
    }
  }
}
