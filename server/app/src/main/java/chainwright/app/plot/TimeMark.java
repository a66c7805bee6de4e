package chainwright.app.plot;

/**
 * A point of a course over time worth a word, such as "63 % after 10 ms".
 *
 * @param timeSeconds when [s], finite
 * @param heightDb its height [dB]; NaN puts it on the baseline, a value off the axis at the frame
 * @param label the word
 */
public record TimeMark(double timeSeconds, double heightDb, String label) {

  /**
   * Checks the time.
   *
   * @param timeSeconds when [s]
   * @param heightDb its height [dB]
   * @param label the word
   * @throws IllegalArgumentException if the time is not finite
   */
  public TimeMark {
    if (!Double.isFinite(timeSeconds)) {
      throw new IllegalArgumentException(
          "the time of a mark must be finite, but was " + timeSeconds + " s");
    }
  }
}
