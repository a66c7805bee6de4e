package chainwright.dsp.signal;

import java.util.List;

/** The coefficients for each place that a new sample can have between two old ones. */
sealed interface PhaseRows {

  /**
   * Returns the coefficients of a phase.
   *
   * @param phase the place, in parts of a sample, from 0
   * @param scratch may be used for them, as long as {@link #taps}
   * @return the coefficients, not to be changed
   */
  double[] row(int phase, double[] scratch);

  /** How many coefficients a phase has. */
  int taps();

  /** All of them, computed beforehand. */
  final class Exact implements PhaseRows {

    private final double[][] rows;

    Exact(List<double[]> rows) {
      this.rows = rows.toArray(double[][]::new);
    }

    @Override
    public double[] row(int phase, double[] scratch) {
      return rows[phase];
    }

    @Override
    public int taps() {
      return rows[0].length;
    }
  }

  /**
   * Interpolated between finely spaced rows by polynomials of third degree through four of them.
   *
   * <p>With 256 rows a sample the error stays below 3/128 (π/256)^4 = 5.3e−10, or −185 dB (the
   * remainder of Lagrange's formula for a function that is band-limited to half the rate).
   */
  final class Interpolated implements PhaseRows {

    static final int SPACING = 256;

    private final int phases;
    private final double[][] fine;

    Interpolated(WindowedSinc kernel, int phases) {
      this.phases = phases;
      fine = new double[SPACING + 3][];
      for (int row = 0; row < fine.length; row++) {
        fine[row] = kernel.row((row - 1.0) / SPACING);
      }
    }

    @Override
    public double[] row(int phase, double[] scratch) {
      long scaled = (long) phase * SPACING;
      int base = (int) (scaled / phases);
      double t = (double) (scaled % phases) / phases;
      double before = -t * (t - 1) * (t - 2) / 6;
      double at = (t + 1) * (t - 1) * (t - 2) / 2;
      double after = -(t + 1) * t * (t - 2) / 2;
      double beyond = (t + 1) * t * (t - 1) / 6;
      double[] r0 = fine[base];
      double[] r1 = fine[base + 1];
      double[] r2 = fine[base + 2];
      double[] r3 = fine[base + 3];
      for (int tap = 0; tap < scratch.length; tap++) {
        scratch[tap] = before * r0[tap] + at * r1[tap] + after * r2[tap] + beyond * r3[tap];
      }
      return scratch;
    }

    @Override
    public int taps() {
      return fine[0].length;
    }
  }
}
