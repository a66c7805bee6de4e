package chainwright.dsp.dynamics;

/**
 * A compressor's curve that turns down no further than so much: the curve of a de-esser and of a
 * high-frequency limiter, such as at most 6 dB.
 *
 * <p>The slope is continuous in the knee; where the reduction reaches its most there is a corner,
 * above which the output rises again dB for dB.
 *
 * @param compressor the curve below the most
 * @param maxReductionDb the most gain reduction [dB], ≥ 0, finite
 */
public record MaxReductionCurve(CompressorCurve compressor, double maxReductionDb)
    implements OverThresholdCurve {

  /**
   * Checks the settings.
   *
   * @param compressor the curve below the most
   * @param maxReductionDb the most gain reduction [dB]
   * @throws IllegalArgumentException if the most is negative or not finite
   */
  public MaxReductionCurve {
    Arguments.requireFiniteNotNegative("the maximum reduction", maxReductionDb);
  }

  @Override
  public double thresholdDb() {
    return compressor.thresholdDb();
  }

  @Override
  public double restsUpToDb() {
    return compressor.restsUpToDb();
  }

  @Override
  public double gainReductionDb(double inputDb) {
    return Math.min(maxReductionDb, compressor.gainReductionDb(inputDb));
  }

  @Override
  public double fixedGainDb() {
    return compressor.fixedGainDb();
  }
}
