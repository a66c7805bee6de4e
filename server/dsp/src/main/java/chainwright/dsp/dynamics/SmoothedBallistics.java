package chainwright.dsp.dynamics;

/**
 * One attack and one release, such as 10 ms and 150 ms.
 *
 * @param attackSeconds the time constant of a growing reduction [s], ≥ 0; 0 is at once
 * @param releaseSeconds the time constant of a shrinking reduction [s], ≥ 0
 * @param smoothing how the two are joined
 */
public record SmoothedBallistics(double attackSeconds, double releaseSeconds, Smoothing smoothing)
    implements Ballistics {

  /**
   * Checks the times.
   *
   * @param attackSeconds the time constant of a growing reduction [s]
   * @param releaseSeconds the time constant of a shrinking reduction [s]
   * @param smoothing how the two are joined
   * @throws IllegalArgumentException if a time is negative or not finite
   */
  public SmoothedBallistics {
    Arguments.requireFiniteNotNegative("the attack", attackSeconds);
    Arguments.requireFiniteNotNegative("the release", releaseSeconds);
  }

  @Override
  public SmoothedBallistics withAttack(double newAttackSeconds) {
    return new SmoothedBallistics(newAttackSeconds, releaseSeconds, smoothing);
  }

  @Override
  public SmoothedBallistics withRelease(double newReleaseSeconds) {
    return new SmoothedBallistics(attackSeconds, newReleaseSeconds, smoothing);
  }

  @Override
  public GainSmoother newSmoother(double sampleRateHz) {
    double attack = GainSmoother.coefficient(attackSeconds, sampleRateHz);
    double release = GainSmoother.coefficient(releaseSeconds, sampleRateHz);
    return smoothing == Smoothing.BRANCHING
        ? new GainSmoother.Branching(attack, release)
        : new GainSmoother.Decoupled(attack, release);
  }
}
