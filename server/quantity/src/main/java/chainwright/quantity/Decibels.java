package chainwright.quantity;

/**
 * A gain, a difference of levels or an amount of reduction, such as -2.5 dB.
 *
 * @param decibels the amount [dB], finite; positive is louder, and gain reduction is positive
 */
public record Decibels(double decibels) implements Quantity {

  /**
   * Checks the value.
   *
   * @param decibels the amount [dB]
   * @throws IllegalArgumentException if the value is not finite
   */
  public Decibels {
    Quantity.requireFinite("the amount", decibels);
  }

  @Override
  public double baseValue() {
    return decibels;
  }

  @Override
  public Dimension dimension() {
    return Dimension.GAIN;
  }

  @Override
  public String toString() {
    return NumberText.formatSigned(decibels, 4) + " dB";
  }
}
