package chainwright.dsp.dynamics;

/**
 * The gain of a bell or shelf that follows the level of its own band: its static gain below the
 * threshold, moving by at most its maximum change above it.
 *
 * <p>The move is that of a compressor's gain computer, mirrored for a boost, so a maximum change of
 * −4 dB is a cut and +2 dB a boost. {@link #gainDb} is the band's gain and {@link #outputDb} the
 * level of the band after it.
 *
 * @param thresholdDb the middle of the knee [dB re full scale], finite
 * @param ratio how steeply the gain moves, in [1, ∞]
 * @param kneeWidthDb the full width of the knee [dB], ≥ 0
 * @param staticGainDb the gain at rest [dB], finite
 * @param maxChangeDb the furthest move from it [dB], finite; negative is a cut, positive a boost
 */
public record DynamicBandCurve(
    double thresholdDb, double ratio, double kneeWidthDb, double staticGainDb, double maxChangeDb)
    implements OverThresholdCurve {

  /**
   * Checks the settings.
   *
   * @param thresholdDb the middle of the knee [dB re full scale]
   * @param ratio how steeply the gain moves, in [1, ∞]
   * @param kneeWidthDb the full width of the knee [dB]
   * @param staticGainDb the gain at rest [dB]
   * @param maxChangeDb the furthest move from it [dB]
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public DynamicBandCurve {
    Arguments.requireFinite("the threshold", thresholdDb);
    Arguments.requireRatio(ratio);
    Arguments.requireFiniteNotNegative("the knee width", kneeWidthDb);
    Arguments.requireFinite("the static gain", staticGainDb);
    Arguments.requireFinite("the maximum change", maxChangeDb);
  }

  /**
   * Returns how far the band is turned down from its static gain.
   *
   * @param inputDb the level of the band [dB re full scale]
   * @return the gain reduction [dB]; negative where the band is boosted
   */
  @Override
  public double gainReductionDb(double inputDb) {
    double move =
        Math.min(
            Math.abs(maxChangeDb),
            Knee.reductionDb(1 - 1 / ratio, inputDb - thresholdDb, kneeWidthDb));
    return maxChangeDb > 0 ? -move : move;
  }

  @Override
  public double fixedGainDb() {
    return staticGainDb;
  }
}
