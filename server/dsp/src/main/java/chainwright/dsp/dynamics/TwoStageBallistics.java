package chainwright.dsp.dynamics;

/**
 * One attack and a release in two stages that depends on the programme: short peaks recover fast,
 * and after long reduction a part of it recovers slowly.
 *
 * <p>After reduction has stood still at G dB and its cause has gone, what is left at time t is G
 * (split · exp(−t/fast) + (1 − split) · exp(−t/slow)). The slow part fills up with the fast time
 * constant while reduction is asked for, so a peak much shorter than that leaves none of it.
 *
 * <p>Source: this definition is ours; two time constants of release are common practice, no source.
 *
 * @param attackSeconds the time constant of a growing reduction [s], ≥ 0
 * @param fastSeconds the time constant of the fast release [s], ≥ 0
 * @param slowSeconds the time constant of the slow release [s], ≥ the fast one
 * @param splitShare the share that recovers fast after long reduction, in [0, 1]
 */
public record TwoStageBallistics(
    double attackSeconds, double fastSeconds, double slowSeconds, double splitShare)
    implements Ballistics {

  /**
   * Checks the times.
   *
   * @param attackSeconds the time constant of a growing reduction [s]
   * @param fastSeconds the time constant of the fast release [s]
   * @param slowSeconds the time constant of the slow release [s]
   * @param splitShare the share that recovers fast
   * @throws IllegalArgumentException if a time is negative or not finite, the slow release is
   *     faster than the fast one, or the share lies outside 0 to 1
   */
  public TwoStageBallistics {
    Arguments.requireFiniteNotNegative("the attack", attackSeconds);
    Arguments.requireFiniteNotNegative("the fast release", fastSeconds);
    Arguments.requireFiniteNotNegative("the slow release", slowSeconds);
    if (slowSeconds < fastSeconds) {
      throw new IllegalArgumentException(
          "the slow release must not be shorter than the fast one of "
              + fastSeconds
              + " s, but was "
              + slowSeconds
              + " s");
    }
    if (!(splitShare >= 0 && splitShare <= 1)) {
      throw new IllegalArgumentException(
          "the split must lie between 0 and 1, but was " + splitShare);
    }
  }

  @Override
  public TwoStageBallistics withAttack(double newAttackSeconds) {
    return new TwoStageBallistics(newAttackSeconds, fastSeconds, slowSeconds, splitShare);
  }

  @Override
  public TwoStageBallistics withRelease(double newReleaseSeconds) {
    return new TwoStageBallistics(
        attackSeconds, newReleaseSeconds, Math.max(slowSeconds, newReleaseSeconds), splitShare);
  }

  @Override
  public GainSmoother newSmoother(double sampleRateHz) {
    return new GainSmoother.TwoStage(
        GainSmoother.coefficient(attackSeconds, sampleRateHz),
        GainSmoother.coefficient(fastSeconds, sampleRateHz),
        GainSmoother.coefficient(slowSeconds, sampleRateHz),
        1 - splitShare);
  }
}
