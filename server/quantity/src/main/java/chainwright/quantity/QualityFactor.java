package chainwright.quantity;

/**
 * The quality factor of a resonance, such as Q 1.4; how it is defined is said by each filter.
 *
 * @param value the quality factor, no unit, finite and above 0
 */
public record QualityFactor(double value) implements Quantity {

  /**
   * Checks the value.
   *
   * @param value the quality factor
   * @throws IllegalArgumentException if the value is not finite or not above 0
   */
  public QualityFactor {
    Quantity.requireFinite("the quality factor", value);
    if (value <= 0) {
      throw new IllegalArgumentException("the quality factor must be above 0, but was " + value);
    }
  }

  @Override
  public double baseValue() {
    return value;
  }

  @Override
  public Dimension dimension() {
    return Dimension.QUALITY;
  }

  @Override
  public String toString() {
    return "Q " + NumberText.format(value);
  }
}
