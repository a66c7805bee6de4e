package chainwright.dsp.nonlinear;

import java.util.function.DoubleUnaryOperator;

/** The search for the drive that gives a wanted distortion. */
final class DriveSolver {

  private static final double LEAST_DB = -120;
  private static final double MOST_DB = 120;
  private static final double STEP_DB = 12;
  private static final double EXACT_DB = 1e-10;
  private static final double EXACT_ERROR = 1e-11;

  private DriveSolver() {}

  /**
   * Returns the smallest drive [dB] at which the distortion reaches the wanted one.
   *
   * @throws IllegalArgumentException if there is none from −120 dB to 120 dB
   */
  static double solve(DoubleUnaryOperator thdOfDriveDb, double thdShare) {
    if (!(thdShare > 0)) {
      throw new IllegalArgumentException("the THD must be above 0, but was " + thdShare);
    }
    // Distortion need not rise for ever with drive, so the bracket is sought from below.
    double high = LEAST_DB;
    double highError = error(thdOfDriveDb, high, thdShare);
    double lowError = Double.NEGATIVE_INFINITY;
    while (highError < 0) {
      high += STEP_DB;
      if (high > MOST_DB) {
        throw new IllegalArgumentException(
            "the THD must be one the shaper can reach, but was " + 100 * thdShare + " %");
      }
      lowError = highError;
      highError = error(thdOfDriveDb, high, thdShare);
    }
    double low = high - STEP_DB;
    while (high - low > EXACT_DB) {
      double width = high - low;
      // In decibels of both, the curve is nearly straight: a chord first, then a halving in case
      // the chord moved one end only.
      double chord = low + width * lowError / (lowError - highError);
      for (double drive : new double[] {chord, Double.NaN}) {
        double at = drive > low && drive < high ? drive : (low + high) / 2;
        double atError = error(thdOfDriveDb, at, thdShare);
        if (Math.abs(atError) < EXACT_ERROR) {
          return at;
        }
        if (atError < 0) {
          low = at;
          lowError = atError;
        } else {
          high = at;
          highError = atError;
        }
      }
    }
    return high;
  }

  /**
   * Returns how far the distortion is from the wanted one, as a logarithm; −∞ where there is none.
   */
  private static double error(DoubleUnaryOperator thdOfDriveDb, double driveDb, double thdShare) {
    return Math.log(thdOfDriveDb.applyAsDouble(driveDb) / thdShare);
  }
}
