package chainwright.quantity;

/**
 * A plain count, such as the 4 sections of an all-pass.
 *
 * @param value the count, no unit, finite
 */
public record Count(double value) implements Quantity {

  /**
   * Checks the value.
   *
   * @param value the count
   * @throws IllegalArgumentException if the value is not finite
   */
  public Count {
    Quantity.requireFinite("the count", value);
  }

  @Override
  public double baseValue() {
    return value;
  }

  @Override
  public Dimension dimension() {
    return Dimension.COUNT;
  }

  @Override
  public String toString() {
    return NumberText.format(value);
  }
}
