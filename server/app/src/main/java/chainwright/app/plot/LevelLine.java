package chainwright.app.plot;

/**
 * An input level with a name, such as a threshold.
 *
 * @param inputDbfs the level [dBFS], finite
 * @param label its name, such as "threshold -24 dBFS"
 */
public record LevelLine(double inputDbfs, String label) {

  /**
   * Checks the level.
   *
   * @param inputDbfs the level [dBFS]
   * @param label its name
   * @throws IllegalArgumentException if the level is not finite
   */
  public LevelLine {
    if (!Double.isFinite(inputDbfs)) {
      throw new IllegalArgumentException(
          "the level of a line must be finite, but was " + inputDbfs + " dBFS");
    }
  }
}
