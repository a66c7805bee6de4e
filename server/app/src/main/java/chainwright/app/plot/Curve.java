package chainwright.app.plot;

/**
 * A line of a plot, such as a stage's gain over frequency.
 *
 * @param label the name written beside the line; may be empty, and then nothing is written
 * @param role what the line stands for
 * @param x the places along the horizontal axis in the plot's unit [Hz], [dBFS] or [s]: finite,
 *     none smaller than the one before; places of 0 or less are left out on a logarithmic axis
 * @param y the values at those places in the plot's unit, as many as {@code x}; NaN leaves a gap,
 *     an infinity is drawn to the frame
 */
public record Curve(String label, CurveRole role, Samples x, Samples y) {

  /**
   * Checks the lengths and the order.
   *
   * @param label the name written beside the line
   * @param role what the line stands for
   * @param x the places
   * @param y the values
   * @throws IllegalArgumentException if the lengths differ, or a place is not finite or falls back
   */
  public Curve {
    if (x.size() != y.size()) {
      throw new IllegalArgumentException(
          "a curve must have as many values as places, but had "
              + y.size()
              + " values at "
              + x.size()
              + " places");
    }
    for (int i = 0; i < x.size(); i++) {
      if (!Double.isFinite(x.get(i)) || (i > 0 && x.get(i) < x.get(i - 1))) {
        throw new IllegalArgumentException(
            "the places of a curve must be finite and never fall, but place "
                + i
                + " was "
                + x.get(i));
      }
    }
  }

  /**
   * Returns whether the curve has a point at all.
   *
   * @return true if it has none
   */
  public boolean isEmpty() {
    return x.size() == 0;
  }
}
