package chainwright.dsp.dynamics;

/** A running compressor of one channel, made by {@link CompressorDesign#newProcessor}. */
public final class Compressor implements GainProcessor {

  private final OverThresholdCurve curve;
  private final LevelDetector detector;
  private final GainSmoother smoother;

  /** −1 where the curve boosts, so that the smoother sees amounts; else 1. */
  private final double sign;

  private final double fixedGainDb;

  Compressor(CompressorDesign design, double sampleRateHz) {
    curve = design.curve();
    detector = design.detector().newDetector(sampleRateHz);
    smoother = design.ballistics().newSmoother(sampleRateHz);
    sign = curve instanceof DynamicBandCurve band && band.maxChangeDb() > 0 ? -1 : 1;
    fixedGainDb = curve.fixedGainDb();
  }

  @Override
  public double gainDb(double keySample) {
    return gainOfLevelDb(detector.levelDb(keySample));
  }

  @Override
  public double gainOfLevelDb(double levelDb) {
    return fixedGainDb - sign * smoother.process(sign * curve.gainReductionDb(levelDb));
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
    smoother.settle(sign * curve.gainReductionDb(levelDb));
  }
}
