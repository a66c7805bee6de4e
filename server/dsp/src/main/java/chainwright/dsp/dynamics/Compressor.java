package chainwright.dsp.dynamics;

/** A running compressor of one channel, made by {@link CompressorDesign#newProcessor}. */
public final class Compressor implements GainProcessor {

  /** Far above the rounding of a level, far below what can be heard. */
  private static final double MARGIN = 1e-9;

  private final OverThresholdCurve curve;
  private final LevelDetector detector;
  private final GainSmoother smoother;

  /**
   * The most that the curve boosts [dB], from which the smoother counts, so that it sees amounts.
   */
  private final double mostBoostDb;

  private final double fixedGainDb;

  /** Magnitudes below this surely ask for nothing, which takes no logarithm to see. */
  private final double quiet;

  Compressor(CompressorDesign design, double sampleRateHz) {
    curve = design.curve();
    detector = design.detector().newDetector(sampleRateHz);
    smoother = design.ballistics().newSmoother(sampleRateHz);
    mostBoostDb = mostBoostDb(curve);
    fixedGainDb = curve.fixedGainDb();
    quiet =
        design.detector() instanceof Detector.Peak
            ? Gains.toFactor(curve.restsUpToDb()) * (1 - MARGIN)
            : 0;
  }

  /** Returns the most that a curve boosts [dB]. */
  static double mostBoostDb(OverThresholdCurve curve) {
    return curve instanceof DynamicBandCurve band ? band.maxBoostDb() : 0;
  }

  @Override
  public double gainDb(double keySample) {
    return Math.abs(keySample) < quiet
        ? gainOfReductionDb(0)
        : gainOfLevelDb(detector.levelDb(keySample));
  }

  @Override
  public void gainsDb(double[] key, double[] gainDb, int count) {
    // Step by step for the whole row, since much of a step is done for several samples at once.
    detector.levelsDb(key, quiet, gainDb, count);
    curve.toReductionsDb(gainDb, count);
    for (int i = 0; i < count; i++) {
      gainDb[i] += mostBoostDb;
    }
    smoother.process(gainDb, count);
    double unreducedDb = fixedGainDb + mostBoostDb;
    for (int i = 0; i < count; i++) {
      gainDb[i] = unreducedDb - gainDb[i];
    }
  }

  @Override
  public double gainOfLevelDb(double levelDb) {
    return gainOfReductionDb(curve.gainReductionDb(levelDb));
  }

  private double gainOfReductionDb(double wantedDb) {
    return fixedGainDb + mostBoostDb - smoother.process(wantedDb + mostBoostDb);
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
