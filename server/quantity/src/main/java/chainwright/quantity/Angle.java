package chainwright.quantity;

/**
 * An angle of phase, such as 90 deg.
 *
 * @param degrees the angle [deg], finite; positive leads
 */
public record Angle(double degrees) implements Quantity {

  /**
   * Checks the value.
   *
   * @param degrees the angle [deg]
   * @throws IllegalArgumentException if the value is not finite
   */
  public Angle {
    Quantity.requireFinite("the angle", degrees);
  }

  @Override
  public double baseValue() {
    return degrees;
  }

  @Override
  public Dimension dimension() {
    return Dimension.ANGLE;
  }

  @Override
  public String toString() {
    return NumberText.format(degrees) + " deg";
  }
}
