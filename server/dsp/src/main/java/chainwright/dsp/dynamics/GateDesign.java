package chainwright.dsp.dynamics;

/**
 * A gate, or with a finite ratio and no hysteresis a downward expander.
 *
 * <p>A closed gate opens when the level reaches the threshold, and its gain rises with the attack.
 * It stays open while the level is not below the threshold less the hysteresis, and for the hold
 * after that, during which its gain does not fall; then the gain falls with the release. A level
 * below the closing threshold never opens it. Look-ahead is a delay of the samples against the key,
 * and the caller's.
 *
 * <p>Source: common practice, no source; attack and release are those of Giannoulis, Massberg and
 * Reiss, JAES 60(6), 2012, eq. 16, with their parts exchanged.
 *
 * @param curve the curves and their hysteresis
 * @param detector how the level is taken
 * @param attackSeconds the time constant of opening [s], ≥ 0
 * @param holdSeconds how long the gate stays open after the level has fallen [s], ≥ 0
 * @param releaseSeconds the time constant of closing [s], ≥ 0
 */
public record GateDesign(
    GateCurve curve,
    Detector detector,
    double attackSeconds,
    double holdSeconds,
    double releaseSeconds)
    implements GainControl {

  /**
   * Checks the times.
   *
   * @param curve the curves and their hysteresis
   * @param detector how the level is taken
   * @param attackSeconds the time constant of opening [s]
   * @param holdSeconds how long the gate stays open after the level has fallen [s]
   * @param releaseSeconds the time constant of closing [s]
   * @throws IllegalArgumentException if a time is negative or not finite
   */
  public GateDesign {
    Arguments.requireFiniteNotNegative("the attack", attackSeconds);
    Arguments.requireFiniteNotNegative("the hold", holdSeconds);
    Arguments.requireFiniteNotNegative("the release", releaseSeconds);
  }

  @Override
  public Gate newProcessor(double sampleRateHz) {
    return new Gate(this, sampleRateHz);
  }
}
