package chainwright.dsp.dynamics;

/**
 * How fast a gain follows its curve: attack and release.
 *
 * <p>Times are time constants of the gain reduction in dB: after a step, the time to 1 − 1/e = 63 %
 * of the way. Other definitions differ by a factor: 10 % to 90 % takes 2.2 times as long, 90 % 2.3
 * times.
 */
public sealed interface Ballistics permits SmoothedBallistics, TwoStageBallistics {

  /**
   * Returns the time constant of a growing reduction.
   *
   * @return the attack [s], ≥ 0
   */
  double attackSeconds();

  /**
   * Starts a smoother for one channel.
   *
   * @param sampleRateHz the sample rate [Hz], above 0
   * @return a smoother at no gain reduction
   * @throws IllegalArgumentException if the sample rate is not finite and above 0
   */
  GainSmoother newSmoother(double sampleRateHz);

  /**
   * Returns the same with another attack.
   *
   * @param newAttackSeconds the time constant of a growing reduction [s], ≥ 0
   * @return the new ballistics
   * @throws IllegalArgumentException if the time is negative or not finite
   */
  Ballistics withAttack(double newAttackSeconds);

  /**
   * Returns the same with another release; of two stages the fast one, and the slow one where it
   * would else be the shorter.
   *
   * @param newReleaseSeconds the time constant of a shrinking reduction [s], ≥ 0
   * @return the new ballistics
   * @throws IllegalArgumentException if the time is negative or not finite
   */
  Ballistics withRelease(double newReleaseSeconds);
}
