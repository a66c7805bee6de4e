package chainwright.app.audiofile.flac;

/**
 * Finds the coefficients with which a sample is best told from those before it.
 *
 * <p>Source: the autocorrelation method with the recursion of Levinson and Durbin, as in J.
 * Makhoul, "Linear Prediction: A Tutorial Review", Proc. IEEE 63 (1975), from memory. The window is
 * Tukey's with tapers of a quarter at each side.
 */
final class LinearPredictor {

  static final int MOST_ORDER = 12;

  /** How many bits a coefficient has. */
  static final int PRECISION = 15;

  private static final int MOST_SHIFT = 15;

  private final double[] correlation = new double[MOST_ORDER + 1];
  private final double[][] byOrder = new double[MOST_ORDER + 1][MOST_ORDER];
  private final double[] errors = new double[MOST_ORDER + 1];
  private final int[] coefficients = new int[MOST_ORDER];
  private double[] window = new double[0];
  private double[] windowed = new double[0];
  private int order;
  private int shift;

  /** The order that was chosen; 0 if no predictor is worth it. */
  int order() {
    return order;
  }

  /** How far a prediction is shifted right. */
  int shift() {
    return shift;
  }

  /** The coefficients, that of the sample just before first. */
  int[] coefficients() {
    return coefficients;
  }

  /** Finds the predictor of a block. */
  void analyze(long[] samples, int count) {
    order = 0;
    int most = Math.min(MOST_ORDER, count - 1);
    if (most < 1) {
      return;
    }
    correlate(samples, count, most);
    if (correlation[0] > 0) {
      int reached = recur(most);
      order = cheapest(reached, count);
      quantise();
    }
  }

  private void correlate(long[] samples, int count, int most) {
    if (window.length != count) {
      window = tukey(count);
      windowed = new double[count];
    }
    for (int i = 0; i < count; i++) {
      windowed[i] = samples[i] * window[i];
    }
    for (int lag = 0; lag <= most; lag++) {
      double sum = 0;
      for (int i = lag; i < count; i++) {
        sum += windowed[i] * windowed[i - lag];
      }
      correlation[lag] = sum;
    }
  }

  private static double[] tukey(int count) {
    double[] window = new double[count];
    int taper = Math.max(count / 4, 1);
    for (int i = 0; i < count; i++) {
      int fromEdge = Math.min(i, count - 1 - i);
      window[i] = fromEdge >= taper ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * (fromEdge + 1) / taper);
    }
    return window;
  }

  /** Fills in the coefficients of all orders up to the one returned. */
  private int recur(int most) {
    errors[0] = correlation[0];
    for (int m = 1; m <= most; m++) {
      double[] before = byOrder[m - 1];
      double[] now = byOrder[m];
      double sum = correlation[m];
      for (int i = 0; i < m - 1; i++) {
        sum -= before[i] * correlation[m - 1 - i];
      }
      double reflection = sum / errors[m - 1];
      errors[m] = errors[m - 1] * (1 - reflection * reflection);
      for (int i = 0; i < m - 1; i++) {
        now[i] = before[i] - reflection * before[m - 2 - i];
      }
      now[m - 1] = reflection;
      if (!(errors[m] > 0)) {
        return m - 1;
      }
    }
    return most;
  }

  /** A residual of variance v takes about log2(v) / 2 bits a sample. */
  private int cheapest(int reached, int count) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int m = 1; m <= reached; m++) {
      double each = Math.max(0.5 * Math.log(errors[m] / count) / Math.log(2), 0);
      double bits = each * (count - m) + m * PRECISION;
      if (bits < least) {
        least = bits;
        best = m;
      }
    }
    return best;
  }

  /** Rounds to integers, and carries each one's error over to the next. */
  private void quantise() {
    double largest = 0;
    for (int i = 0; i < order; i++) {
      largest = Math.max(largest, Math.abs(byOrder[order][i]));
    }
    shift = Math.min(PRECISION - 2 - Math.getExponent(largest), MOST_SHIFT);
    if (shift < 0 || largest == 0) {
      order = 0;
      return;
    }
    int limit = (1 << (PRECISION - 1)) - 1;
    double carried = 0;
    for (int i = 0; i < order; i++) {
      double exact = byOrder[order][i] * (1 << shift) + carried;
      coefficients[i] = (int) Math.max(-limit, Math.min(limit, Math.rint(exact)));
      carried = exact - coefficients[i];
    }
  }

  /** Computes the residuals of the predictor; false if one of them is too large to be coded. */
  boolean residual(long[] samples, int count, long[] into) {
    int m = order;
    int[] c = coefficients;
    long outside = 0;
    for (int i = m; i < count; i++) {
      long sum = 0;
      for (int j = 0; j < m; j++) {
        sum += c[j] * samples[i - 1 - j];
      }
      long rest = samples[i] - (sum >> shift);
      into[i] = rest;
      outside |= rest ^ rest >> 63;
    }
    return FixedPredictor.isCodable(outside);
  }
}
