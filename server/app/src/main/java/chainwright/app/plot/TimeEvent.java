package chainwright.app.plot;

/**
 * A moment with a name, such as the step up that starts an attack.
 *
 * @param timeSeconds when [s], finite
 * @param label what happens, such as "up 10 dB"
 */
public record TimeEvent(double timeSeconds, String label) {

  /**
   * Checks the time.
   *
   * @param timeSeconds when [s]
   * @param label what happens
   * @throws IllegalArgumentException if the time is not finite
   */
  public TimeEvent {
    if (!Double.isFinite(timeSeconds)) {
      throw new IllegalArgumentException(
          "the time of an event must be finite, but was " + timeSeconds + " s");
    }
  }
}
