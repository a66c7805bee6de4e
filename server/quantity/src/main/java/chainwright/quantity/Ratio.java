package chainwright.quantity;

/**
 * Input change to output change above or below a threshold, such as 3:1.
 *
 * @param toOne how many decibels at the input make one at the output, no unit, finite and above 0
 */
public record Ratio(double toOne) implements Quantity {

  /**
   * Checks the value.
   *
   * @param toOne how many decibels at the input make one at the output
   * @throws IllegalArgumentException if the value is not finite or not above 0
   */
  public Ratio {
    Quantity.requireFinite("the ratio", toOne);
    if (toOne <= 0) {
      throw new IllegalArgumentException("the ratio must be above 0, but was " + toOne);
    }
  }

  @Override
  public double baseValue() {
    return toOne;
  }

  @Override
  public Dimension dimension() {
    return Dimension.RATIO;
  }

  @Override
  public String toString() {
    return NumberText.format(toOne) + ":1";
  }
}
