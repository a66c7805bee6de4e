package chainwright.dsp.dynamics;

/**
 * The curve of a compressor, such as 4:1 above −24 dB with a knee of 6 dB.
 *
 * <p>Source: Giannoulis, Massberg and Reiss, "Digital Dynamic Range Compressor Design", JAES 60(6),
 * 2012, eq. 4. The slope is continuous at both ends of the knee.
 *
 * @param thresholdDb the middle of the knee [dB re full scale], finite
 * @param ratio the change of input that changes the output by 1 dB, in [1, ∞]
 * @param kneeWidthDb the full width of the knee [dB], ≥ 0; 0 is a corner
 * @param makeUpDb the gain after the reduction [dB], finite
 */
public record CompressorCurve(double thresholdDb, double ratio, double kneeWidthDb, double makeUpDb)
    implements OverThresholdCurve {

  /**
   * Checks the settings.
   *
   * @param thresholdDb the middle of the knee [dB re full scale]
   * @param ratio the ratio, in [1, ∞]
   * @param kneeWidthDb the full width of the knee [dB]
   * @param makeUpDb the gain after the reduction [dB]
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public CompressorCurve {
    Arguments.requireFinite("the threshold", thresholdDb);
    Arguments.requireRatio(ratio);
    Arguments.requireFiniteNotNegative("the knee width", kneeWidthDb);
    Arguments.requireFinite("the make-up gain", makeUpDb);
  }

  /**
   * Returns a curve without make-up gain.
   *
   * @param thresholdDb the middle of the knee [dB re full scale]
   * @param ratio the ratio, in [1, ∞]
   * @param kneeWidthDb the full width of the knee [dB]
   * @return the curve
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public static CompressorCurve of(double thresholdDb, double ratio, double kneeWidthDb) {
    return new CompressorCurve(thresholdDb, ratio, kneeWidthDb, 0);
  }

  @Override
  public double restsUpToDb() {
    return thresholdDb - kneeWidthDb / 2;
  }

  @Override
  public double gainReductionDb(double inputDb) {
    return Knee.reductionDb(1 - 1 / ratio, inputDb - thresholdDb, kneeWidthDb);
  }

  @Override
  public double fixedGainDb() {
    return makeUpDb;
  }
}
