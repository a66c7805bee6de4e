package chainwright.dsp.repair;

/**
 * Rebuilds samples so that linear prediction finds the least power of what is new in them and in
 * those that follow.
 *
 * <p>The normal equations have the autocorrelation of the coefficients in their bands and are
 * solved by the decomposition of Cholesky. Source: A. J. E. M. Janssen, R. N. J. Veldhuis, L. B.
 * Vries, "Adaptive Interpolation of Discrete-Time Signals That Can Be Modeled as Autoregressive
 * Processes", IEEE Transactions on Acoustics, Speech, and Signal Processing 34(2), 1986; from
 * memory.
 */
final class GapInterpolation {

  /**
   * What rounding may leave of a pivot, which is above 0 by its nature; as a share of the first.
   */
  private static final double LEAST_PIVOT = 1e-15;

  private final int order;
  private final double[] bands;
  private final double[][] lower;
  private final double[] unknown;

  GapInterpolation(int order, int longest) {
    this.order = order;
    bands = new double[order + 1];
    lower = new double[longest][order + 1];
    unknown = new double[longest];
  }

  /**
   * Rebuilds a gap in place.
   *
   * @param frame the samples, of which as many as the order are known on both sides
   * @param from the first sample of the gap
   * @param to the one after the last
   * @param coefficients those of the prediction, from 1 on
   */
  void fill(double[] frame, int from, int to, double[] coefficients) {
    for (int lag = 0; lag <= order; lag++) {
      bands[lag] = 0;
      for (int k = 0; k + lag <= order; k++) {
        bands[lag] += coefficients[k] * coefficients[k + lag];
      }
    }
    int count = to - from;
    for (int i = 0; i < count; i++) {
      double sum = 0;
      for (int lag = 1; lag <= order; lag++) {
        if (i - lag < 0) {
          sum += bands[lag] * frame[from + i - lag];
        }
        if (i + lag >= count) {
          sum += bands[lag] * frame[from + i + lag];
        }
      }
      unknown[i] = -sum;
    }
    solve(count);
    System.arraycopy(unknown, 0, frame, from, count);
  }

  /** Row i of the lower triangle holds column i − d at d. */
  private void solve(int count) {
    for (int i = 0; i < count; i++) {
      for (int d = Math.min(i, order); d >= 0; d--) {
        int j = i - d;
        double sum = bands[d];
        for (int m = Math.max(0, i - order); m < j; m++) {
          if (j - m <= order) {
            sum -= lower[i][i - m] * lower[j][j - m];
          }
        }
        lower[i][d] = d == 0 ? Math.sqrt(Math.max(sum, LEAST_PIVOT * bands[0])) : sum / lower[j][0];
      }
      double right = unknown[i];
      for (int d = Math.min(i, order); d >= 1; d--) {
        right -= lower[i][d] * unknown[i - d];
      }
      unknown[i] = right / lower[i][0];
    }
    for (int i = count - 1; i >= 0; i--) {
      double right = unknown[i];
      for (int d = 1; d <= order && i + d < count; d++) {
        right -= lower[i + d][d] * unknown[i + d];
      }
      unknown[i] = right / lower[i][0];
    }
  }
}
