package chainwright.quantity;

/**
 * A width on the frequency axis, such as 1.2 oct.
 *
 * @param octaves the width [oct], finite and above 0
 */
public record Bandwidth(double octaves) implements Quantity {

  /**
   * Checks the value.
   *
   * @param octaves the width [oct]
   * @throws IllegalArgumentException if the value is not finite or not above 0
   */
  public Bandwidth {
    Quantity.requireFinite("the width", octaves);
    if (octaves <= 0) {
      throw new IllegalArgumentException("the width must be above 0, but was " + octaves);
    }
  }

  @Override
  public double baseValue() {
    return octaves;
  }

  @Override
  public Dimension dimension() {
    return Dimension.BANDWIDTH;
  }

  @Override
  public String toString() {
    return NumberText.format(octaves) + " oct";
  }
}
