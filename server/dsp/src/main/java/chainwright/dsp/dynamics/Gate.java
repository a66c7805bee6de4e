package chainwright.dsp.dynamics;

/** A running gate of one channel, made by {@link GateDesign#newProcessor}. */
public final class Gate implements GainProcessor {

  private final ExpanderCurve openingCurve;
  private final ExpanderCurve closingCurve;
  private final LevelDetector detector;
  private final GainSmoother smoother;
  private final long holdSamples;
  private boolean open;
  private long holdLeft;

  Gate(GateDesign design, double sampleRateHz) {
    openingCurve = design.curve().openingCurve();
    closingCurve = design.curve().closingCurve();
    detector = design.detector().newDetector(sampleRateHz);
    // A gate's attack is the time of a shrinking reduction, a compressor's that of a growing one.
    smoother =
        new GainSmoother.Branching(
            GainSmoother.coefficient(design.releaseSeconds(), sampleRateHz),
            GainSmoother.coefficient(design.attackSeconds(), sampleRateHz));
    holdSamples = (long) Math.ceil(design.holdSeconds() * sampleRateHz);
    reset();
  }

  /**
   * Returns whether the gate is open: past its threshold, within its hysteresis or its hold.
   *
   * @return true if the gain rises or is up
   */
  public boolean isOpen() {
    return open;
  }

  @Override
  public double gainDb(double keySample) {
    return gainOfLevelDb(detector.levelDb(keySample));
  }

  @Override
  public double gainOfLevelDb(double levelDb) {
    return -smoother.process(wantedReductionDb(levelDb));
  }

  @Override
  public void reset() {
    detector.reset();
    open = false;
    holdLeft = 0;
    smoother.reset();
    smoother.settle(openingCurve.gainReductionDb(LevelDetector.FLOOR_DB));
  }

  /** Takes the level of a steady sine for one sample, through the detector. */
  double gainOfSineDb(double levelDb) {
    return gainOfLevelDb(detector.levelOfSineDb(levelDb));
  }

  /** Puts the state where a long steady sine, reached from silence, would have brought it. */
  void settle(double levelDb) {
    reset();
    detector.settle(levelDb);
    smoother.settle(wantedReductionDb(levelDb));
  }

  private double wantedReductionDb(double levelDb) {
    if (levelDb >= openingCurve.thresholdDb()) {
      open = true;
    }
    if (!open) {
      return openingCurve.gainReductionDb(levelDb);
    }
    double reductionDb = closingCurve.gainReductionDb(levelDb);
    if (levelDb >= closingCurve.thresholdDb()) {
      holdLeft = holdSamples;
      return reductionDb;
    }
    if (holdLeft > 0) {
      holdLeft--;
      return Math.min(reductionDb, smoother.appliedDb);
    }
    open = false;
    return openingCurve.gainReductionDb(levelDb);
  }
}
