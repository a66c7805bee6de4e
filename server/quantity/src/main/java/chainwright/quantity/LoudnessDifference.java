package chainwright.quantity;

/**
 * A difference of loudness, such as 6 LU.
 *
 * @param loudnessUnits the difference [LU], finite; positive is louder
 */
public record LoudnessDifference(double loudnessUnits) implements Quantity {

  /**
   * Checks the value.
   *
   * @param loudnessUnits the difference [LU]
   * @throws IllegalArgumentException if the value is not finite
   */
  public LoudnessDifference {
    Quantity.requireFinite("the loudness difference", loudnessUnits);
  }

  @Override
  public double baseValue() {
    return loudnessUnits;
  }

  @Override
  public Dimension dimension() {
    return Dimension.LOUDNESS_DIFFERENCE;
  }

  @Override
  public String toString() {
    return NumberText.formatSigned(loudnessUnits, 4) + " LU";
  }
}
