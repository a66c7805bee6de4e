package chainwright.dsp.dynamics;

/** A curve that acts on what is louder than its threshold, and rests below it. */
public sealed interface OverThresholdCurve extends StaticCurve
    permits CompressorCurve, LimiterCurve, MaxReductionCurve, DynamicBandCurve {

  /**
   * Returns the level about which the knee is centred.
   *
   * @return the threshold [dB re full scale]
   */
  double thresholdDb();

  /**
   * Returns the level up to which the curve does nothing: the threshold, or where its knee begins.
   *
   * @return the level [dB re full scale]; −∞ if it does something to every level
   */
  double restsUpToDb();
}
