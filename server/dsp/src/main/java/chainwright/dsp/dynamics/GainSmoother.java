package chainwright.dsp.dynamics;

/**
 * A running smoother of one channel's gain reduction: what the curve asks for in, what is applied
 * out.
 *
 * <p>Output never exceeds the largest input, is never negative, and is stable for every attack and
 * release from 0 s up. Input that is negative or NaN counts as 0; it must not be infinite.
 */
public abstract sealed class GainSmoother {

  /** Below this [dB] a reduction is none: a decay must not end in denormal numbers. */
  private static final double NONE_DB = 1e-15;

  /** The reduction that is applied [dB]. */
  double appliedDb;

  /** The second state, where the smoothing has one: kept peak or slow part [dB]. */
  double storedDb;

  private GainSmoother() {}

  /**
   * Takes one sample of the wanted reduction.
   *
   * @param reductionDb what the curve asks for [dB], ≥ 0
   * @return what is applied [dB], ≥ 0
   */
  public final double process(double reductionDb) {
    double wanted = reductionDb >= 0 ? reductionDb : 0;
    advance(wanted);
    if (appliedDb < NONE_DB && wanted == 0) {
      appliedDb = 0;
    }
    if (storedDb < NONE_DB && wanted == 0) {
      storedDb = 0;
    }
    return appliedDb;
  }

  /** Takes the first of a row of wanted reductions [dB] and puts in their place what is applied. */
  final void process(double[] reductionDb, int count) {
    for (int i = 0; i < count; i++) {
      reductionDb[i] = process(reductionDb[i]);
    }
  }

  /** Returns to the initial state: no gain reduction. */
  public final void reset() {
    appliedDb = 0;
    storedDb = 0;
  }

  /** Puts the state where a long steady demand would have brought it. */
  abstract void settle(double reductionDb);

  abstract void advance(double wantedDb);

  /** Whether {@link #storedDb} is a state of its own, beside what is applied. */
  abstract boolean hasStored();

  /**
   * Returns the share of its old value that a one-pole smoother keeps a sample, exp(−1/(τ fs)).
   *
   * <p>Source: Giannoulis, Massberg and Reiss, JAES 60(6), 2012, eq. 7.
   */
  static double coefficient(double seconds, double sampleRateHz) {
    Arguments.requireFinitePositive("the sample rate", sampleRateHz);
    return seconds == 0 ? 0 : Math.exp(-1 / (seconds * sampleRateHz));
  }

  private static double towards(double target, double from, double keptShare) {
    return keptShare * from + (1 - keptShare) * target;
  }

  /** Source: Giannoulis, Massberg and Reiss, JAES 60(6), 2012, eq. 16. */
  static final class Branching extends GainSmoother {
    private final double attack;
    private final double release;

    Branching(double attack, double release) {
      this.attack = attack;
      this.release = release;
    }

    @Override
    void settle(double reductionDb) {
      appliedDb = reductionDb;
    }

    @Override
    boolean hasStored() {
      return false;
    }

    @Override
    void advance(double wantedDb) {
      // The quicker of both is the larger while the reduction grows, else the smaller; which of
      // them
      // it is no processor foresees.
      double attacked = towards(wantedDb, appliedDb, attack);
      double released = towards(wantedDb, appliedDb, release);
      appliedDb = attack < release ? Math.max(attacked, released) : Math.min(attacked, released);
    }
  }

  /** Source: Giannoulis, Massberg and Reiss, JAES 60(6), 2012, eq. 17. */
  static final class Decoupled extends GainSmoother {
    private final double attack;
    private final double release;

    Decoupled(double attack, double release) {
      this.attack = attack;
      this.release = release;
    }

    @Override
    void settle(double reductionDb) {
      appliedDb = reductionDb;
      storedDb = reductionDb;
    }

    @Override
    boolean hasStored() {
      return true;
    }

    @Override
    void advance(double wantedDb) {
      storedDb = Math.max(wantedDb, towards(wantedDb, storedDb, release));
      appliedDb = towards(storedDb, appliedDb, attack);
    }
  }

  /** The two-stage release; {@link TwoStageBallistics} defines it. */
  static final class TwoStage extends GainSmoother {
    private final double attack;
    private final double fast;
    private final double slow;
    private final double slowShare;

    TwoStage(double attack, double fast, double slow, double slowShare) {
      this.attack = attack;
      this.fast = fast;
      this.slow = slow;
      this.slowShare = slowShare;
    }

    @Override
    void settle(double reductionDb) {
      appliedDb = reductionDb;
      storedDb = slowShare * reductionDb;
    }

    @Override
    boolean hasStored() {
      return true;
    }

    @Override
    void advance(double wantedDb) {
      double restDb = Math.max(0, appliedDb - storedDb);
      double unmetDb = Math.max(0, wantedDb - storedDb);
      double share = slowShare * wantedDb;
      storedDb = towards(share, storedDb, share > storedDb ? fast : slow);
      if (wantedDb >= appliedDb) {
        appliedDb = towards(wantedDb, appliedDb, attack);
      } else {
        // What the slow part does not hold falls towards what it does not meet. The sum neither
        // undershoots the demand nor rises while the slow part still fills.
        double releasedDb = storedDb + towards(unmetDb, restDb, fast);
        appliedDb = Math.min(appliedDb, Math.max(wantedDb, releasedDb));
      }
    }
  }
}
