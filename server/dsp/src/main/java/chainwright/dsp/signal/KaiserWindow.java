package chainwright.dsp.signal;

/**
 * The Kaiser window, a bell that trades the depth of its side lobes for the width of its main lobe.
 *
 * <p>Source: J. F. Kaiser and R. W. Schafer, On the use of the I0-sinh window for spectrum
 * analysis, IEEE Transactions on Acoustics, Speech, and Signal Processing 28(1), 1980 (from
 * memory); the shape and the length for a filter: A. V. Oppenheim and R. W. Schafer, Discrete-Time
 * Signal Processing, section 7.5.3 (from memory).
 *
 * @param shapeFactor the β of the literature, ≥ 0: 0 is a rectangle, 8 has side lobes of a filter
 *     near −80 dB
 */
public record KaiserWindow(double shapeFactor) {

  /**
   * Checks the value.
   *
   * @param shapeFactor the shape
   * @throws IllegalArgumentException if the shape is below 0 or not finite
   */
  public KaiserWindow {
    if (!(shapeFactor >= 0) || Double.isInfinite(shapeFactor)) {
      throw new IllegalArgumentException(
          "the shape factor must be at least 0, but was " + shapeFactor);
    }
  }

  /**
   * Makes the window for a filter whose ripple in both bands lies a given amount below 1.
   *
   * @param attenuationDb the attenuation [dB], above 50
   * @return the window
   * @throws IllegalArgumentException if the attenuation is not above 50 dB
   */
  public static KaiserWindow ofAttenuation(double attenuationDb) {
    if (!(attenuationDb > 50)) {
      throw new IllegalArgumentException(
          "the attenuation must lie above 50 dB, but was " + attenuationDb);
    }
    return new KaiserWindow(0.1102 * (attenuationDb - 8.7));
  }

  /**
   * Returns how long a filter must be for a transition of a given width.
   *
   * @param attenuationDb the attenuation [dB], above 50
   * @param transitionRadians the width of the transition [rad a sample], above 0
   * @return the filter's order, one less than its number of coefficients
   */
  public static int order(double attenuationDb, double transitionRadians) {
    return (int) Math.ceil((attenuationDb - 8) / (2.285 * transitionRadians));
  }

  /**
   * Returns the attenuation of a filter of a given length, the other way round.
   *
   * @param order the filter's order, one less than its number of coefficients
   * @param transitionRadians the width of the transition [rad a sample], above 0
   * @return the attenuation [dB]
   */
  static double attenuationDb(int order, double transitionRadians) {
    return 8 + 2.285 * transitionRadians * order;
  }

  /**
   * Returns the window's height.
   *
   * @param x the place, from −1 at its start to 1 at its end
   * @return the height: 1 at 0, 0 outside
   */
  public double at(double x) {
    double inside = 1 - x * x;
    return inside < 0 ? 0 : besselI0(shapeFactor * Math.sqrt(inside)) / besselI0(shapeFactor);
  }

  /** The modified Bessel function of the first kind and order 0: the sum of ((x/2)^k / k!)². */
  private static double besselI0(double x) {
    double sum = 1;
    double term = 1;
    for (int k = 1; term > sum * 1e-17; k++) {
      double factor = x / (2 * k);
      term *= factor * factor;
      sum += term;
    }
    return sum;
  }
}
