package chainwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Writes numbers as the notation does: no exponent, no trailing zeros, a plain hyphen as minus. */
public final class NumberText {

  private static final int SIGNIFICANT_DIGITS = 7;

  private NumberText() {}

  /**
   * Returns a number with at most seven significant digits, such as {@code -2.5}.
   *
   * @param value any finite number
   * @return its decimal spelling without an exponent
   * @throws IllegalArgumentException if the value is NaN or infinite
   */
  public static String format(double value) {
    requireFinite(value);
    BigDecimal rounded =
        new BigDecimal(value).round(new MathContext(SIGNIFICANT_DIGITS, RoundingMode.HALF_EVEN));
    return plain(rounded);
  }

  /**
   * Returns a number with at most so many decimals, such as {@code 3.1} for 3.14159 and 1.
   *
   * @param value any finite number
   * @param decimals the largest number of digits after the point, 0 or more
   * @return its decimal spelling without an exponent and without trailing zeros
   * @throws IllegalArgumentException if the value is NaN or infinite, or {@code decimals} negative
   */
  public static String format(double value, int decimals) {
    requireFinite(value);
    if (decimals < 0) {
      throw new IllegalArgumentException("decimals must not be negative, but was " + decimals);
    }
    return plain(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN));
  }

  /**
   * Returns a number with its sign, such as {@code +2} or {@code -2.5}; zero has none.
   *
   * @param value any finite number
   * @param decimals the largest number of digits after the point, 0 or more
   * @return its signed spelling
   * @throws IllegalArgumentException if the value is NaN or infinite, or {@code decimals} negative
   */
  public static String formatSigned(double value, int decimals) {
    String text = format(value, decimals);
    return text.startsWith("-") || text.equals("0") ? text : "+" + text;
  }

  private static String plain(BigDecimal number) {
    if (number.signum() == 0) {
      return "0";
    }
    return number.stripTrailingZeros().toPlainString();
  }

  private static void requireFinite(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("the number must be finite, but was " + value);
    }
  }
}
