package chainwright.quantity;

/**
 * A length in space, such as 1.4 m between two microphones.
 *
 * @param metres the length [m], finite
 */
public record Distance(double metres) implements Quantity {

  /**
   * Checks the value.
   *
   * @param metres the length [m]
   * @throws IllegalArgumentException if the value is not finite
   */
  public Distance {
    Quantity.requireFinite("the distance", metres);
  }

  @Override
  public double baseValue() {
    return metres;
  }

  @Override
  public Dimension dimension() {
    return Dimension.DISTANCE;
  }

  @Override
  public String toString() {
    return NumberText.format(metres) + " m";
  }
}
