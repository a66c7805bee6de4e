package chainwright.quantity;

/**
 * A span of time or a position in a recording, such as 12 ms.
 *
 * @param seconds the span [s], finite; negative is earlier
 */
public record TimeSpan(double seconds) implements Quantity {

  /**
   * Checks the value.
   *
   * @param seconds the span [s]
   * @throws IllegalArgumentException if the value is not finite
   */
  public TimeSpan {
    Quantity.requireFinite("the time", seconds);
  }

  @Override
  public double baseValue() {
    return seconds;
  }

  @Override
  public Dimension dimension() {
    return Dimension.TIME;
  }

  @Override
  public String toString() {
    return spelling(seconds);
  }

  private static String spelling(double seconds) {
    double size = Math.abs(seconds);
    if (size >= 1) {
      return NumberText.format(seconds) + " s";
    }
    return size >= 1e-4 || size == 0
        ? NumberText.format(seconds * 1e3) + " ms"
        : NumberText.format(seconds * 1e6) + " us";
  }
}
