package chainwright.dsp.dynamics;

/**
 * A running transient shaper of one channel, made by {@link TransientShaperDesign#newProcessor}.
 */
public final class TransientShaper implements GainProcessor {

  private static final double LEVEL_WINDOW_SECONDS = 0.005;
  private static final double COURSE_SECONDS = 0.05;
  private static final double FULL_SHARE_DB = 12;

  private final double onsetDb;
  private final double tailDb;
  private final LevelDetector detector;
  private final double courseKept;
  private double courseDb;

  TransientShaper(TransientShaperDesign design, double sampleRateHz) {
    onsetDb = design.onsetDb();
    tailDb = design.tailDb();
    detector = new Detector.Rms(LEVEL_WINDOW_SECONDS).newDetector(sampleRateHz);
    courseKept = GainSmoother.coefficient(COURSE_SECONDS, sampleRateHz);
    reset();
  }

  @Override
  public double gainDb(double keySample) {
    return gainOfLevelDb(detector.levelDb(keySample));
  }

  @Override
  public double gainOfLevelDb(double levelDb) {
    courseDb = courseKept * courseDb + (1 - courseKept) * levelDb;
    double share = Math.max(-1, Math.min(1, (levelDb - courseDb) / FULL_SHARE_DB));
    return share > 0 ? onsetDb * share : -tailDb * share;
  }

  @Override
  public void reset() {
    detector.reset();
    courseDb = LevelDetector.FLOOR_DB;
  }
}
