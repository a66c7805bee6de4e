package chainwright.dsp.dynamics;

/**
 * The gain of a bell or shelf that follows the level of its own band: turned down while the band is
 * above the threshold, turned up while it is below, both by at most so much.
 *
 * <p>The move is that of a compressor's gain computer, going on below the threshold. {@link
 * #gainDb} is the band's gain and {@link #outputDb} the level of the band after it.
 *
 * @param thresholdDb the level that is left as it is [dB re full scale], finite
 * @param ratio how steeply the gain moves, in [1, ∞]
 * @param maxCutDb the most that is taken away above it [dB], finite, ≥ 0
 * @param maxBoostDb the most that is added below it [dB], finite, ≥ 0; silence gets all of it
 */
public record DynamicBandCurve(double thresholdDb, double ratio, double maxCutDb, double maxBoostDb)
    implements OverThresholdCurve {

  /**
   * Checks the settings.
   *
   * @param thresholdDb the level that is left as it is [dB re full scale]
   * @param ratio how steeply the gain moves, in [1, ∞]
   * @param maxCutDb the most that is taken away above it [dB]
   * @param maxBoostDb the most that is added below it [dB]
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public DynamicBandCurve {
    Arguments.requireFinite("the threshold", thresholdDb);
    Arguments.requireRatio(ratio);
    Arguments.requireFiniteNotNegative("the maximum cut", maxCutDb);
    Arguments.requireFiniteNotNegative("the maximum boost", maxBoostDb);
  }

  @Override
  public double restsUpToDb() {
    return maxBoostDb > 0 ? Double.NEGATIVE_INFINITY : thresholdDb;
  }

  /**
   * Returns how far the band is turned down.
   *
   * @param inputDb the level of the band [dB re full scale]
   * @return the gain reduction [dB]; negative where the band is boosted
   */
  @Override
  public double gainReductionDb(double inputDb) {
    if (ratio == 1) {
      return Double.isNaN(inputDb) ? inputDb : 0;
    }
    double wanted = (1 - 1 / ratio) * (inputDb - thresholdDb);
    return Math.max(0 - maxBoostDb, Math.min(maxCutDb, wanted));
  }
}
