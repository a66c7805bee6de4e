package chainwright.dsp.dynamics;

/**
 * The curve of a downward expander, such as 1:2 below −50 dB, down to a range of 12 dB.
 *
 * <p>The knee is the compressor's, mirrored about the threshold, so the slope is continuous at both
 * its ends. Where the reduction reaches the range there is a corner, below which the output falls
 * dB for dB. The paper has no expander; the mirroring is ours.
 *
 * <p>Source: the knee of Giannoulis, Massberg and Reiss, "Digital Dynamic Range Compressor Design",
 * JAES 60(6), 2012, eq. 4, mirrored.
 *
 * @param thresholdDb the middle of the knee [dB re full scale], finite
 * @param ratio the change of output for 1 dB of input below the knee, in [1, ∞]
 * @param kneeWidthDb the full width of the knee [dB], ≥ 0; 0 where the ratio is infinite
 * @param rangeDb the most gain reduction [dB], in [0, ∞]
 */
public record ExpanderCurve(double thresholdDb, double ratio, double kneeWidthDb, double rangeDb)
    implements UnderThresholdCurve {

  /**
   * Checks the settings.
   *
   * @param thresholdDb the middle of the knee [dB re full scale]
   * @param ratio the change of output for 1 dB of input, in [1, ∞]
   * @param kneeWidthDb the full width of the knee [dB]
   * @param rangeDb the most gain reduction [dB]
   * @throws IllegalArgumentException if a setting is outside its range, or an infinite ratio has a
   *     knee
   */
  public ExpanderCurve {
    requireSettings(thresholdDb, ratio, kneeWidthDb, rangeDb);
  }

  /** Throws unless the settings make a curve. */
  static void requireSettings(
      double thresholdDb, double ratio, double kneeWidthDb, double rangeDb) {
    Arguments.requireFinite("the threshold", thresholdDb);
    Arguments.requireRatio(ratio);
    Arguments.requireFiniteNotNegative("the knee width", kneeWidthDb);
    if (!(rangeDb >= 0)) {
      throw new IllegalArgumentException("the range must not be below 0 dB, but was " + rangeDb);
    }
    if (Double.isInfinite(ratio) && kneeWidthDb > 0) {
      throw new IllegalArgumentException(
          "an infinite ratio has no knee, but the knee width was " + kneeWidthDb + " dB");
    }
  }

  @Override
  public double gainReductionDb(double inputDb) {
    return Math.min(rangeDb, Knee.reductionDb(ratio - 1, thresholdDb - inputDb, kneeWidthDb));
  }

  @Override
  public double outputDb(double inputDb) {
    // Silence stays silence, also where the reduction is infinite.
    return inputDb == Double.NEGATIVE_INFINITY ? inputDb : inputDb - gainReductionDb(inputDb);
  }
}
