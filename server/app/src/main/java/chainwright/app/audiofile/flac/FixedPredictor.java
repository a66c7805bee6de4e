package chainwright.app.audiofile.flac;

/**
 * The predictors of fixed coefficients: a polynomial through the last samples.
 *
 * <p>Source: RFC 9639, section 9.2.5.
 */
final class FixedPredictor {

  private static final int MOST_ORDER = 4;

  private FixedPredictor() {}

  /** Returns the order, 0 to 4, whose residuals are the smallest on the whole. */
  static int choose(long[] samples, int count) {
    long[] sums = new long[MOST_ORDER + 1];
    for (int i = MOST_ORDER; i < count; i++) {
      long d0 = samples[i];
      long d1 = d0 - samples[i - 1];
      long e1 = samples[i - 1] - samples[i - 2];
      long f1 = samples[i - 2] - samples[i - 3];
      long d2 = d1 - e1;
      long e2 = e1 - f1;
      long d3 = d2 - e2;
      long d4 = d3 - (e2 - (f1 - (samples[i - 3] - samples[i - 4])));
      sums[0] += Math.abs(d0);
      sums[1] += Math.abs(d1);
      sums[2] += Math.abs(d2);
      sums[3] += Math.abs(d3);
      sums[4] += Math.abs(d4);
    }
    int best = 0;
    for (int order = 1; order <= Math.min(MOST_ORDER, count - 1); order++) {
      if (sums[order] < sums[best]) {
        best = order;
      }
    }
    return best;
  }

  /** Computes the residuals from the order on; false if one is too large to be coded. */
  static boolean residual(int order, long[] s, int count, long[] into) {
    long outside = 0;
    for (int i = order; i < count; i++) {
      long rest =
          switch (order) {
            case 0 -> s[i];
            case 1 -> s[i] - s[i - 1];
            case 2 -> s[i] - 2 * s[i - 1] + s[i - 2];
            case 3 -> s[i] - 3 * (s[i - 1] - s[i - 2]) - s[i - 3];
            default -> s[i] - 4 * (s[i - 1] + s[i - 3]) + 6 * s[i - 2] + s[i - 4];
          };
      into[i] = rest;
      outside |= rest ^ rest >> 63;
    }
    return isCodable(outside);
  }

  /**
   * Asks whether residuals, each turned over where it is negative, and put together, stay within 32
   * bits without the lowest value. Source: RFC 9639, section 9.2.7.3.
   */
  static boolean isCodable(long together) {
    return together < Integer.MAX_VALUE;
  }
}
