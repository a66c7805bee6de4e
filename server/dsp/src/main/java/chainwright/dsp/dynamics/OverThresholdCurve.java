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

  /**
   * Puts in the place of levels the reductions that they ask for.
   *
   * @param levelDb the levels [dB re full scale]; receives the reductions [dB]
   * @param count how many from the first on
   */
  default void toReductionsDb(double[] levelDb, int count) {
    for (int i = 0; i < count; i++) {
      levelDb[i] = gainReductionDb(levelDb[i]);
    }
  }
}
