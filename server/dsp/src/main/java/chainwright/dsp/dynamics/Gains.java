package chainwright.dsp.dynamics;

/** The conversion of a gain in dB to a factor. */
final class Gains {

  private static final double NEPER_PER_DB = Math.log(10) / 20;

  private Gains() {}

  /** Returns 10^(gain/20). */
  static double toFactor(double gainDb) {
    return Math.exp(gainDb * NEPER_PER_DB);
  }
}
