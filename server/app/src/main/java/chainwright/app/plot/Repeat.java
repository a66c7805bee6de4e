package chainwright.app.plot;

/**
 * A sound that comes once, such as the first repeat of an echo.
 *
 * @param timeSeconds when [s], finite
 * @param levelDb how loud [dB]; may be negative infinity
 */
public record Repeat(double timeSeconds, double levelDb) {

  /**
   * Checks the numbers.
   *
   * @param timeSeconds when [s]
   * @param levelDb how loud [dB]
   * @throws IllegalArgumentException if the time is not finite or the level not a number
   */
  public Repeat {
    if (!Double.isFinite(timeSeconds) || Double.isNaN(levelDb)) {
      throw new IllegalArgumentException(
          "a repeat must have a finite time and a level, but had "
              + timeSeconds
              + " s and "
              + levelDb
              + " dB");
    }
  }
}
