package chainwright.quantity;

/**
 * A share of a whole, such as 30 %.
 *
 * @param percent the share [%], finite
 */
public record Share(double percent) implements Quantity {

  /**
   * Checks the value.
   *
   * @param percent the share [%]
   * @throws IllegalArgumentException if the value is not finite
   */
  public Share {
    Quantity.requireFinite("the share", percent);
  }

  @Override
  public double baseValue() {
    return percent;
  }

  @Override
  public Dimension dimension() {
    return Dimension.SHARE;
  }

  @Override
  public String toString() {
    return NumberText.format(percent) + " %";
  }
}
