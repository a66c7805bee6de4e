package chainwright.dsp.dynamics;

/** The conversion of a gain in dB to a factor. */
final class Gains {

  private static final double NEPER_PER_DB = Math.log(10) / 20;

  private Gains() {}

  /** Returns 10^(gain/20). */
  static double toFactor(double gainDb) {
    return Math.exp(gainDb * NEPER_PER_DB);
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
