package chainwright.dsp.dynamics;

/** A curve that turns down what is softer than its threshold, and rests above it. */
public sealed interface UnderThresholdCurve extends StaticCurve permits ExpanderCurve, GateCurve {

  /**
   * Returns the level about which the knee is centred.
   *
   * @return the threshold [dB re full scale]
   */
  double thresholdDb();

  /**
   * Returns the most the curve turns down.
   *
   * @return the range [dB], ≥ 0
   */
  double rangeDb();
}
