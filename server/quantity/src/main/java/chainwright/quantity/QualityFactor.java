package chainwright.quantity;

/**
 * The quality factor of a resonance, such as Q 1.4; how it is defined is said by each filter.
 *
 * @param value the quality factor, no unit, finite and above 0
 */
public record QualityFactor(double value) implements Quantity {

  private static final double HALF_LN_2 = Math.log(2) / 2;

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

  /**
   * Returns the quality factor of a region so wide, such as 1.4142 for 1 oct.
   *
   * <p>Source: Audio EQ Cookbook (W3C Group Note), 1/Q = 2 sinh(ln 2 / 2 · BW), the analogue form;
   * the ends lie where the quality factor of the filter says, of a bell at half the gain in dB.
   *
   * @param width the distance of the two ends
   * @return the quality factor
   * @throws IllegalArgumentException if the width is so great or small that the factor is 0 or
   *     infinite
   */
  public static QualityFactor ofBandwidth(Bandwidth width) {
    return new QualityFactor(1 / (2 * Math.sinh(HALF_LN_2 * width.octaves())));
  }

  /**
   * Returns how wide the region is, the inverse of {@link #ofBandwidth}.
   *
   * @return the distance of the two ends
   */
  public Bandwidth toBandwidth() {
    double half = 1 / (2 * value);
    double asinh = Math.log(half + Math.sqrt(half * half + 1));
    return new Bandwidth(asinh / HALF_LN_2);
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
