package chainwright.quantity;

/**
 * A span counted in samples, such as 37 samples; fractions are allowed.
 *
 * @param samples the count [samples], finite
 */
public record SampleCount(double samples) implements Quantity {

  /**
   * Checks the value.
   *
   * @param samples the count [samples]
   * @throws IllegalArgumentException if the value is not finite
   */
  public SampleCount {
    Quantity.requireFinite("the count of samples", samples);
  }

  @Override
  public double baseValue() {
    return samples;
  }

  @Override
  public Dimension dimension() {
    return Dimension.SAMPLES;
  }

  @Override
  public String toString() {
    return NumberText.format(samples) + " samples";
  }
}
