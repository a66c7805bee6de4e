package chainwright.dsp.dynamics;

/**
 * The two curves of a gate with hysteresis: one while it is closed, one while it is open.
 *
 * <p>A closed gate opens when the level reaches the threshold; an open one closes when the level
 * falls below the threshold less the hysteresis. As one curve, a gate is its opening curve.
 *
 * @param thresholdDb the level that opens the gate [dB re full scale], finite
 * @param ratio the change of output for 1 dB of input below the knee, in [1, ∞]; ∞ is usual
 * @param kneeWidthDb the full width of the knee [dB], ≥ 0; 0 where the ratio is infinite
 * @param rangeDb the most gain reduction [dB], ≥ 0, finite
 * @param hysteresisDb how far below the threshold the gate closes [dB], ≥ 0, finite
 */
public record GateCurve(
    double thresholdDb, double ratio, double kneeWidthDb, double rangeDb, double hysteresisDb)
    implements UnderThresholdCurve {

  /**
   * Checks the settings.
   *
   * @param thresholdDb the level that opens the gate [dB re full scale]
   * @param ratio the change of output for 1 dB of input, in [1, ∞]
   * @param kneeWidthDb the full width of the knee [dB]
   * @param rangeDb the most gain reduction [dB]
   * @param hysteresisDb how far below the threshold the gate closes [dB]
   * @throws IllegalArgumentException if a setting is outside its range, or an infinite ratio has a
   *     knee
   */
  public GateCurve {
    Arguments.requireFiniteNotNegative("the range", rangeDb);
    Arguments.requireFiniteNotNegative("the hysteresis", hysteresisDb);
    ExpanderCurve.requireSettings(thresholdDb, ratio, kneeWidthDb, rangeDb);
  }

  /**
   * Returns a gate of infinite ratio, open or closed and nothing between.
   *
   * @param thresholdDb the level that opens the gate [dB re full scale]
   * @param rangeDb the most gain reduction [dB]
   * @param hysteresisDb how far below the threshold the gate closes [dB]
   * @return the curve
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public static GateCurve of(double thresholdDb, double rangeDb, double hysteresisDb) {
    return new GateCurve(thresholdDb, Double.POSITIVE_INFINITY, 0, rangeDb, hysteresisDb);
  }

  /**
   * Returns the curve that holds while the gate is closed.
   *
   * @return the curve about the threshold
   */
  public ExpanderCurve openingCurve() {
    return new ExpanderCurve(thresholdDb, ratio, kneeWidthDb, rangeDb);
  }

  /**
   * Returns the curve that holds while the gate is open.
   *
   * @return the curve about the threshold less the hysteresis
   */
  public ExpanderCurve closingCurve() {
    return new ExpanderCurve(thresholdDb - hysteresisDb, ratio, kneeWidthDb, rangeDb);
  }

  @Override
  public double gainReductionDb(double inputDb) {
    return Math.min(rangeDb, Knee.reductionDb(ratio - 1, thresholdDb - inputDb, kneeWidthDb));
  }
}
