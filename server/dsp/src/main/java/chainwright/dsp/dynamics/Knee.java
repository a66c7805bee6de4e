package chainwright.dsp.dynamics;

/**
 * The quadratic knee that all curves share.
 *
 * <p>Source: Giannoulis, Massberg and Reiss, "Digital Dynamic Range Compressor Design", JAES 60(6),
 * 2012, eq. 4.
 */
final class Knee {

  private Knee() {}

  /**
   * Returns the amount of reduction [dB], ≥ 0, that a curve of this slope asks for.
   *
   * @param slope reduction per dB beyond the knee, in [0, ∞]; 1 − 1/ratio for a compressor
   * @param excessDb how far the level is past the threshold, in the direction that is reduced
   * @param widthDb the full width of the knee, centred on the threshold
   * @return the reduction; NaN for NaN
   */
  static double reductionDb(double slope, double excessDb, double widthDb) {
    double past = pastDb(excessDb, widthDb);
    double reduction = slope * past;
    // Guards 0 · ∞: a level of ±∞ at 1:1, and an infinite ratio short of its threshold.
    return Double.isNaN(reduction) && !Double.isNaN(past) ? 0 : reduction;
  }

  /**
   * Returns 0 below the knee, the excess above it, and a parabola tangent to both within. Levels
   * come and go from sample to sample, and a processor foresees no branch that hangs on them.
   */
  private static double pastDb(double excessDb, double widthDb) {
    if (widthDb == 0) {
      return Math.max(0, excessDb);
    }
    double intoKnee = Math.max(0, Math.min(widthDb, excessDb + widthDb / 2));
    return intoKnee * intoKnee * (0.5 / widthDb) + Math.max(0, excessDb - widthDb / 2);
  }
}
