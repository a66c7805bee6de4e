package chainwright.dsp.filter;

/** A small dense system of linear equations. */
final class LinearSystem {

  private LinearSystem() {}

  /**
   * Solves by Gaussian elimination with row pivoting.
   *
   * @param m square matrix with the right-hand side as its last column, overwritten
   * @return the unknowns; not finite if the matrix is singular
   */
  static double[] solve(double[][] m) {
    int n = m.length;
    for (int column = 0; column < n; column++) {
      int pivot = column;
      for (int row = column + 1; row < n; row++) {
        if (Math.abs(m[row][column]) > Math.abs(m[pivot][column])) {
          pivot = row;
        }
      }
      double[] top = m[pivot];
      m[pivot] = m[column];
      m[column] = top;
      for (int row = column + 1; row < n; row++) {
        double factor = m[row][column] / top[column];
        for (int k = column; k <= n; k++) {
          m[row][k] -= factor * top[k];
        }
      }
    }
    double[] x = new double[n];
    for (int row = n - 1; row >= 0; row--) {
      double sum = m[row][n];
      for (int k = row + 1; k < n; k++) {
        sum -= m[row][k] * x[k];
      }
      x[row] = sum / m[row][row];
    }
    return x;
  }
}
