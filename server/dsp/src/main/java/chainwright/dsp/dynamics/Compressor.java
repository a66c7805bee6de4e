package chainwright.dsp.dynamics;

/** A running compressor of one channel, made by {@link CompressorDesign#newProcessor}. */
public final class Compressor implements GainProcessor {

  private final OverThresholdCurve curve;
  private final LevelDetector detector;
  private final GainSmoother smoother;

  /**
   * The most that the curve boosts [dB], from which the smoother counts, so that it sees amounts.
   */
  private final double mostBoostDb;

  private final double fixedGainDb;

  Compressor(CompressorDesign design, double sampleRateHz) {
    curve = design.curve();
    detector = design.detector().newDetector(sampleRateHz);
    smoother = design.ballistics().newSmoother(sampleRateHz);
    mostBoostDb = mostBoostDb(curve);
    fixedGainDb = curve.fixedGainDb();
  }

  /** Returns the most that a curve boosts [dB]. */
  static double mostBoostDb(OverThresholdCurve curve) {
    return curve instanceof DynamicBandCurve band ? band.maxBoostDb() : 0;
  }

  @Override
  public double gainDb(double keySample) {
    return gainOfLevelDb(detector.levelDb(keySample));
  }

  @Override
  public double gainOfLevelDb(double levelDb) {
    double amountDb = smoother.process(curve.gainReductionDb(levelDb) + mostBoostDb);
    return fixedGainDb + mostBoostDb - amountDb;
  }

  @Override
  public void reset() {
    detector.reset();
    smoother.reset();
  }

  /** Takes the level of a steady sine for one sample, through the detector. */
  double gainOfSineDb(double levelDb) {
    return gainOfLevelDb(detector.levelOfSineDb(levelDb));
  }

  /** Puts the state where a long steady sine would have brought it. */
  void settle(double levelDb) {
    detector.settle(levelDb);
    smoother.settle(curve.gainReductionDb(levelDb) + mostBoostDb);
  }
}
