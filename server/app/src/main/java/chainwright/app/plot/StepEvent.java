package chainwright.app.plot;

/**
 * A moment at which the input jumps, such as the step up that starts the attack.
 *
 * @param timeSeconds when [s], finite
 * @param label what happens, such as "up 10 dB"
 */
public record StepEvent(double timeSeconds, String label) {

  /**
   * Checks the time.
   *
   * @param timeSeconds when [s]
   * @param label what happens
   * @throws IllegalArgumentException if the time is not finite
   */
  public StepEvent {
    if (!Double.isFinite(timeSeconds)) {
      throw new IllegalArgumentException(
          "the time of a step must be finite, but was " + timeSeconds + " s");
    }
  }
}
