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
    // Guards 0 · ∞: a level of ±∞ at 1:1, and an infinite ratio short of its threshold.
    return past == 0 || (slope == 0 && !Double.isNaN(past)) ? 0 : slope * past;
  }

  /** Returns 0 below the knee, the excess above it, and a parabola tangent to both within. */
  private static double pastDb(double excessDb, double widthDb) {
    if (2 * excessDb <= -widthDb) {
      return 0;
    }
    if (2 * excessDb >= widthDb) {
      return excessDb;
    }
    double intoKnee = excessDb + widthDb / 2;
    return intoKnee * intoKnee / (2 * widthDb);
  }
}
