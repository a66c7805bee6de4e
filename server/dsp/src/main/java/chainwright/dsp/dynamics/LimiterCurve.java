package chainwright.dsp.dynamics;

/**
 * The curve of a limiter: ∞:1 above its ceiling, which no steady input passes.
 *
 * <p>The knee reaches half its width below the ceiling; its parabola ends, level, on the ceiling.
 *
 * <p>Source: Giannoulis, Massberg and Reiss, "Digital Dynamic Range Compressor Design", JAES 60(6),
 * 2012, eq. 4 with an infinite ratio.
 *
 * @param ceilingDb the highest output [dB re full scale], finite
 * @param kneeWidthDb the full width of the knee [dB], ≥ 0
 */
public record LimiterCurve(double ceilingDb, double kneeWidthDb) implements OverThresholdCurve {

  /**
   * Checks the settings.
   *
   * @param ceilingDb the highest output [dB re full scale]
   * @param kneeWidthDb the full width of the knee [dB]
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public LimiterCurve {
    Arguments.requireFinite("the ceiling", ceilingDb);
    Arguments.requireFiniteNotNegative("the knee width", kneeWidthDb);
  }

  @Override
  public double thresholdDb() {
    return ceilingDb;
  }

  @Override
  public double restsUpToDb() {
    return ceilingDb - kneeWidthDb / 2;
  }

  @Override
  public double gainReductionDb(double inputDb) {
    return Knee.reductionDb(1, inputDb - ceilingDb, kneeWidthDb);
  }

  @Override
  public double outputDb(double inputDb) {
    // Not input less reduction, whose rounding may pass the ceiling and which is NaN for ∞.
    return 2 * (inputDb - ceilingDb) >= kneeWidthDb
        ? ceilingDb
        : Math.min(ceilingDb, inputDb - gainReductionDb(inputDb));
  }
}
