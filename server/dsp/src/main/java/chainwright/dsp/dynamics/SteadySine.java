package chainwright.dsp.dynamics;

/**
 * The gain reduction of a compressor on a steady sine, once it repeats exactly.
 *
 * <p>A half period of the sine maps the smoother's state to a new one. The map is piecewise linear,
 * so its fixed point is found by Newton's method with differences in a few half periods, where
 * running until the release has settled could take thousands.
 */
final class SteadySine {

  private static final int FEWEST_SAMPLES = 64;
  private static final int MOST_SAMPLES = 512;

  /** The attack should last this many samples, so that time steps do not show. */
  private static final double SAMPLES_PER_ATTACK = 8;

  private static final int MOST_STEPS = 24;
  private static final double SETTLED_DB = 1e-10;
  private static final double DIFFERENCE_DB = 1e-5;

  /** Half periods that are run where Newton's method has found nothing. */
  private static final int PLAIN_RUNS = 400;

  /** The first quarter of a sine, in as many steps as the finest half period has to its crest. */
  private static final double[] QUARTER = new double[MOST_SAMPLES / 2 + 1];

  static {
    for (int i = 0; i < QUARTER.length; i++) {
      QUARTER[i] = Math.sin(Math.PI * i / MOST_SAMPLES);
    }
  }

  private SteadySine() {}

  /** Returns the sine at a sample of the half period that begins at phase 0. */
  static double sine(int sample, int halfPeriod) {
    int at = sample * (MOST_SAMPLES / halfPeriod);
    return QUARTER[Math.min(at, MOST_SAMPLES - at)];
  }

  /** Returns the cosine at a sample of the half period that begins at phase 0. */
  static double cosine(int sample, int halfPeriod) {
    int at = sample * (MOST_SAMPLES / halfPeriod);
    int toCrest = MOST_SAMPLES / 2 - at;
    return toCrest >= 0 ? QUARTER[toCrest] : -QUARTER[-toCrest];
  }

  /**
   * Returns how many samples make half a period: a power of two from 64 to 512, more where the
   * attack is short.
   */
  static int halfPeriodSamples(double attackPeriods) {
    int samples = FEWEST_SAMPLES;
    while (samples < MOST_SAMPLES && 2 * samples * attackPeriods < SAMPLES_PER_ATTACK) {
      samples *= 2;
    }
    return samples;
  }

  /** Returns the settled reduction [dB] at each sample of half a period that begins at phase 0. */
  static double[] reductionDb(
      CompressorDesign design, double sampleRateHz, double levelDb, int halfPeriod) {
    double[] wanted = wantedDb(design, sampleRateHz, levelDb, halfPeriod);
    double mostBoostDb = Compressor.mostBoostDb(design.curve());
    double most = 0;
    for (int i = 0; i < halfPeriod; i++) {
      wanted[i] += mostBoostDb;
      most = Math.max(most, wanted[i]);
    }
    GainSmoother smoother = design.ballistics().newSmoother(sampleRateHz);
    smoother.settle(most);
    settle(smoother, wanted);
    for (int i = 0; i < halfPeriod; i++) {
      wanted[i] = smoother.process(wanted[i]) - mostBoostDb;
    }
    return wanted;
  }

  /** Returns what the curve asks for on the settled level. */
  private static double[] wantedDb(
      CompressorDesign design, double sampleRateHz, double levelDb, int halfPeriod) {
    double amplitude = Math.pow(10, levelDb / 20);
    double[] magnitude = new double[halfPeriod];
    for (int i = 0; i < halfPeriod; i++) {
      magnitude[i] = amplitude * sine(i, halfPeriod);
    }
    LevelDetector detector = design.detector().newDetector(sampleRateHz);
    detector.settlePeriodic(magnitude);
    double[] wanted = new double[halfPeriod];
    for (int i = 0; i < halfPeriod; i++) {
      wanted[i] = design.curve().gainReductionDb(detector.levelDb(magnitude[i]));
    }
    return wanted;
  }

  private static void settle(GainSmoother smoother, double[] wanted) {
    for (int step = 0; step < MOST_STEPS; step++) {
      double applied = smoother.appliedDb;
      double stored = smoother.storedDb;
      run(smoother, wanted, applied, stored);
      double errorApplied = smoother.appliedDb - applied;
      double errorStored = smoother.storedDb - stored;
      if (Math.abs(errorApplied) + Math.abs(errorStored) < SETTLED_DB) {
        return;
      }
      double newApplied = smoother.appliedDb;
      double newStored = smoother.storedDb;
      double h = DIFFERENCE_DB;
      run(smoother, wanted, applied + h, stored);
      double aa = 1 - (smoother.appliedDb - newApplied) / h;
      double sa = -(smoother.storedDb - newStored) / h;
      // One state alone has one slope: with the other's, which is 0, the system would be singular.
      double as = 0;
      double ss = 1;
      if (smoother.hasStored()) {
        run(smoother, wanted, applied, stored + h);
        as = -(smoother.appliedDb - newApplied) / h;
        ss = 1 - (smoother.storedDb - newStored) / h;
      }
      double determinant = aa * ss - as * sa;
      double nextApplied = applied + (ss * errorApplied - as * errorStored) / determinant;
      double nextStored = stored + (aa * errorStored - sa * errorApplied) / determinant;
      boolean sound = nextApplied >= 0 && nextStored >= 0 && nextApplied + nextStored < 1e6;
      smoother.appliedDb = sound ? nextApplied : newApplied;
      smoother.storedDb = sound ? nextStored : newStored;
    }
    for (int i = 0; i < PLAIN_RUNS; i++) {
      run(smoother, wanted, smoother.appliedDb, smoother.storedDb);
    }
  }

  private static void run(
      GainSmoother smoother, double[] wanted, double appliedDb, double storedDb) {
    smoother.appliedDb = appliedDb;
    smoother.storedDb = storedDb;
    for (double demand : wanted) {
      smoother.process(demand);
    }
  }
}
