package chainwright.app.plot;

/**
 * The ends of an axis, such as -12 dB to 12 dB.
 *
 * @param low the lower end in the axis's unit, finite
 * @param high the upper end in the axis's unit, above {@code low}, finite
 */
public record ValueRange(double low, double high) {

  /**
   * Checks the ends.
   *
   * @param low the lower end
   * @param high the upper end
   * @throws IllegalArgumentException if an end is not finite or they do not rise
   */
  public ValueRange {
    if (!Double.isFinite(low) || !Double.isFinite(high) || !(high > low)) {
      throw new IllegalArgumentException(
          "the ends of a range must be finite and rise, but were " + low + " and " + high);
    }
  }

  double span() {
    return high - low;
  }
}
