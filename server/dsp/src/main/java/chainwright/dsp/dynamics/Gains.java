package chainwright.dsp.dynamics;

/** The conversion of a gain in dB to a factor. */
final class Gains {

  private static final double NEPER_PER_DB = Math.log(10) / 20;

  /*
   * The factor is taken apart into a power of 2, a step of a table, and a rest within 0.3 % of 1,
   * whose exponential is the Taylor series up to the fourth power; what is left out is below 2e-15.
   */

  private static final int TABLE_BITS = 7;
  private static final int STEPS = 1 << TABLE_BITS;
  private static final int MANTISSA_BITS = 52;
  private static final int EXPONENT_OF_ONE = 1023;

  private static final double STEPS_PER_DB = STEPS * Math.log(10) / (20 * Math.log(2));
  private static final double NEPER_PER_STEP = Math.log(2) / STEPS;

  /** Beyond this the power of 2 might not be a normal number [dB]. */
  private static final double LARGEST_DB = 6000;

  private static final double[] FACTOR = new double[STEPS];

  static {
    for (int step = 0; step < STEPS; step++) {
      FACTOR[step] = Math.pow(2, (double) step / STEPS);
    }
  }

  private Gains() {}

  /** Returns 10^(gain/20), within 1e-14 of itself. */
  static double toFactor(double gainDb) {
    if (!(Math.abs(gainDb) < LARGEST_DB)) {
      return Math.exp(gainDb * NEPER_PER_DB);
    }
    double steps = gainDb * STEPS_PER_DB;
    int whole = (int) Math.floor(steps + 0.5);
    double rest = (steps - whole) * NEPER_PER_STEP;
    double series = 1 + rest * (1 + rest * (0.5 + rest * (1 / 6.0 + rest * (1 / 24.0))));
    long power = (long) ((whole >> TABLE_BITS) + EXPONENT_OF_ONE) << MANTISSA_BITS;
    return FACTOR[whole & (STEPS - 1)] * series * Double.longBitsToDouble(power);
  }

  /** Converts the first gains of a row; a gain that stands still is converted once. */
  static void toFactors(double[] gainDb, double[] factors, int count) {
    double lastDb = 0;
    double last = 1;
    for (int i = 0; i < count; i++) {
      if (gainDb[i] != lastDb) {
        lastDb = gainDb[i];
        last = toFactor(lastDb);
      }
      factors[i] = last;
    }
  }
}
