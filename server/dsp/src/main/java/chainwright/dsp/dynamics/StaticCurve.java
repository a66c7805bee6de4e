package chainwright.dsp.dynamics;

/**
 * The output level for each steady input level, such as −24 dB in, −22 dB out.
 *
 * <p>Every output curve rises monotonically, and continuously where its ratio is finite. Inputs are
 * finite or −∞; −∞ (silence) gives an output of −∞, and NaN gives NaN.
 */
public sealed interface StaticCurve permits OverThresholdCurve, UnderThresholdCurve {

  /**
   * Returns how far the curve turns down a steady input, before make-up gain.
   *
   * @param inputDb the level as its detector measures it [dB re full scale]
   * @return the gain reduction [dB], positive downwards; never below 0, except in a boosting {@link
   *     DynamicBandCurve}
   */
  double gainReductionDb(double inputDb);

  /**
   * Returns the level that leaves for a steady input, make-up gain and static gain included.
   *
   * @param inputDb the level as its detector measures it [dB re full scale]
   * @return the output level [dB re full scale]
   */
  default double outputDb(double inputDb) {
    return inputDb + gainDb(inputDb);
  }

  /**
   * Returns the whole gain for a steady input: make-up or static gain less gain reduction.
   *
   * @param inputDb the level as its detector measures it [dB re full scale]
   * @return the gain [dB], negative downwards
   */
  default double gainDb(double inputDb) {
    return fixedGainDb() - gainReductionDb(inputDb);
  }

  /**
   * Returns the gain that does not depend on level: make-up gain or the static gain of a band.
   *
   * @return the fixed gain [dB]; 0 for curves without one
   */
  default double fixedGainDb() {
    return 0;
  }
}
