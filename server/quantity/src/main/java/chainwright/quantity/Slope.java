package chainwright.quantity;

/**
 * The asymptotic roll-off of a filter, such as 18 dB/oct: 6 dB/oct for each pole.
 *
 * @param decibelsPerOctave the roll-off [dB/oct], finite
 */
public record Slope(double decibelsPerOctave) implements Quantity {

  /**
   * Checks the value.
   *
   * @param decibelsPerOctave the roll-off [dB/oct]
   * @throws IllegalArgumentException if the value is not finite
   */
  public Slope {
    Quantity.requireFinite("the slope", decibelsPerOctave);
  }

  @Override
  public double baseValue() {
    return decibelsPerOctave;
  }

  @Override
  public Dimension dimension() {
    return Dimension.SLOPE;
  }

  @Override
  public String toString() {
    return NumberText.format(decibelsPerOctave) + " dB/oct";
  }
}
