package chainwright.dsp.signal;

/**
 * The low-pass filter between a rate and its double: linear in phase, a sinc under a Kaiser window,
 * with ripple and stop band at −100 dB.
 *
 * <p>It is a half-band filter: pass band and stop band lie symmetrically about half the lower rate,
 * so that every other coefficient but the middle one is 0. Its coefficients fall into those that
 * meet even frames of the double rate and the middle one, a half, that meets odd ones; the former
 * sum to a half, too, so that a steady signal passes exactly.
 *
 * <p>Source: R. E. Crochiere and L. R. Rabiner, Multirate Digital Signal Processing, 1983, chapters
 * 3 and 4 (from memory); the window's own is {@link KaiserWindow}.
 */
final class TwofoldFilter {

  /** What passes, as a share of the rate that counts: 20 kHz of 44 kHz. */
  static final double PASS_SHARE = 5 / 11.0;

  private static final double ATTENUATION_DB = 101;

  /** The coefficients beside the middle that are not 0, those that meet even frames. */
  private final double[] taps;

  private final int middle;

  /**
   * Designs the filter: flat to {@link #PASS_SHARE} of the rate that counts, and what mirrors that
   * band about half the lower rate is taken away.
   *
   * @param multiple how many times the lower rate is the one that counts, ≥ 1
   */
  TwofoldFilter(int multiple) {
    double transition = Math.PI * (1 - 2 * PASS_SHARE / multiple);
    int half = (KaiserWindow.order(ATTENUATION_DB, transition) + 1) / 2;
    // With an odd middle the zeros lie at both ends, and cost nothing.
    middle = half % 2 == 0 ? half + 1 : half;
    taps = new double[middle + 1];
    KaiserWindow window =
        KaiserWindow.ofAttenuation(KaiserWindow.attenuationDb(2 * middle, transition));
    double sum = 0;
    for (int t = 0; t < taps.length; t++) {
      int x = 2 * t - middle;
      taps[t] = Math.sin(Math.PI * x / 2) / x * window.at(x / (middle + 1.0));
      sum += taps[t];
    }
    for (int t = 0; t < taps.length; t++) {
      taps[t] *= 0.5 / sum;
    }
  }

  /** Returns how late the filter is [frames of the double rate]. */
  int latencyFrames() {
    return middle;
  }

  /** Returns the coefficients of even frames, the same from either end; their sum is a half. */
  double[] taps() {
    return taps;
  }
}
