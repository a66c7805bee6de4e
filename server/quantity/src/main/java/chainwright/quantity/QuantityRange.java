package chainwright.quantity;

/**
 * Two quantities of one dimension and what lies between them, such as 3 to 14 kHz.
 *
 * @param low the lower end
 * @param high the upper end, of the same dimension
 */
public record QuantityRange(Quantity low, Quantity high) {

  /**
   * Checks that both ends measure the same.
   *
   * @param low the lower end
   * @param high the upper end
   * @throws IllegalArgumentException if they are of two dimensions
   */
  public QuantityRange {
    if (low.dimension() != high.dimension()) {
      throw new IllegalArgumentException(
          "both ends must be of one dimension, but were "
              + low.dimension()
              + " and "
              + high.dimension());
    }
  }

  /**
   * Spells the range as the trade does: the unit once where both ends read in it, else one at each
   * end; one value where both ends are the same.
   *
   * @return such as "3 to 14 kHz", "80 Hz to 14 kHz", "-6 to +4 dB", "1.5:1 to 4:1" or "Q 0.5 to 6"
   */
  @Override
  public String toString() {
    String first = low.toString();
    String last = high.toString();
    if (first.equals(last)) {
      return last;
    }
    if (high instanceof QualityFactor) {
      return first + " to " + last.substring(last.indexOf(' ') + 1);
    }
    if (high.baseValue() == 0) {
      return number(first) + " to " + number(last) + unit(first);
    }
    boolean isShared = low.baseValue() == 0 || unit(first).equals(unit(last));
    return (isShared ? number(first) : first) + " to " + last;
  }

  /** What stands before the unit; a ratio keeps its ":1", which no other end lends it. */
  private static String number(String spelt) {
    return spelt.substring(0, spelt.length() - unit(spelt).length());
  }

  private static String unit(String spelt) {
    int blank = spelt.indexOf(' ');
    return blank < 0 ? "" : spelt.substring(blank);
  }
}
