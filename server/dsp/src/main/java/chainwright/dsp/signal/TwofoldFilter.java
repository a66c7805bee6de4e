package chainwright.dsp.signal;

/**
 * The low-pass filter between a rate and its double: linear in phase, a sinc under a Kaiser window,
 * with ripple and stop band at −110 dB.
 *
 * <p>Its coefficients fall into those that meet even frames of the double rate and those that meet
 * odd ones; each of the two sums to a half, so that a steady signal passes exactly. Both are
 * symmetric.
 *
 * <p>Where pass band and stop band lie symmetrically about half the lower rate, every other
 * coefficient but the middle one is 0: a half-band filter.
 *
 * <p>Source: R. E. Crochiere and L. R. Rabiner, Multirate Digital Signal Processing, 1983, chapters
 * 3 and 4 (from memory); the window's own is {@link KaiserWindow}.
 */
final class TwofoldFilter {

  private static final double ATTENUATION_DB = 110;

  private final double[] even;
  private final double[] odd;
  private final int middle;

  /** The band edges are shares of the lower rate. */
  private TwofoldFilter(double passShare, double stopShare) {
    double transition = Math.PI * (stopShare - passShare);
    int half = (KaiserWindow.order(ATTENUATION_DB, transition) + 1) / 2;
    // With an odd middle the zeros of a half-band filter lie at both ends, and cost nothing.
    middle = half % 2 == 0 ? half + 1 : half;
    even = new double[middle + 1];
    odd = new double[middle];
    KaiserWindow window = KaiserWindow.ofAttenuation(ATTENUATION_DB);
    double cutoff = (passShare + stopShare) / 2;
    for (int t = 0; t <= 2 * middle; t++) {
      int x = t - middle;
      double value = cutoff * sinc(cutoff * x) * window.at(x / (middle + 1.0));
      (t % 2 == 0 ? even : odd)[t / 2] = value;
    }
    scaleToHalf(even);
    scaleToHalf(odd);
  }

  /**
   * Returns the filter that makes frames between frames: flat to 0.45 of the lower rate, and what
   * mirrors that band, from 0.55 on, is taken away.
   */
  static TwofoldFilter between() {
    return new TwofoldFilter(0.45, 0.55);
  }

  /**
   * Returns the filter before every second frame is dropped: flat to 0.45 of the lower rate, and
   * nothing above half of it that could fold into the band.
   */
  static TwofoldFilter before() {
    return new TwofoldFilter(0.45, 0.5);
  }

  /**
   * Returns the filter of a lower rate that is itself a multiple of the one that counts, whose
   * whole band passes.
   *
   * @param multiple how many times the lower rate is the one that counts, ≥ 2
   */
  static TwofoldFilter wide(int multiple) {
    return new TwofoldFilter(0.5 / multiple, 1 - 0.5 / multiple);
  }

  /** A multiple of π must not leave a trace where the sinc is 0. */
  private static double sinc(double x) {
    if (x == 0) {
      return 1;
    }
    return x == Math.rint(x) ? 0 : Math.sin(Math.PI * x) / (Math.PI * x);
  }

  private static void scaleToHalf(double[] coefficients) {
    double sum = 0;
    for (double coefficient : coefficients) {
      sum += coefficient;
    }
    for (int t = 0; t < coefficients.length; t++) {
      coefficients[t] *= 0.5 / sum;
    }
  }

  /** Returns how late the filter is [frames of the double rate]. */
  int latencyFrames() {
    return middle;
  }

  /** How many past frames of the lower rate either half needs. */
  int pastFrames() {
    return middle;
  }

  /** Starts the half that meets even frames of the double rate, with its frames times a factor. */
  SymmetricFilter newEvenFilter(double scale) {
    return new SymmetricFilter(even, scale);
  }

  /** Starts the half that meets odd frames of the double rate, with its frames times a factor. */
  SymmetricFilter newOddFilter(double scale) {
    return new SymmetricFilter(odd, scale);
  }
}
