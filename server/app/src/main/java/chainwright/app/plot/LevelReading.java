package chainwright.app.plot;

/**
 * What a stage does at one level, such as -18 dBFS in, -20.3 dBFS out, 2.3 dB of reduction.
 *
 * @param label which level this is, such as "nominal level"
 * @param inputDbfs the level before the stage [dBFS], finite
 * @param outputDbfs the level after the stage [dBFS]; may be negative infinity
 * @param reductionDb the gain reduction [dB], positive where the stage turns down, make-up gain not
 *     counted; may be infinite
 */
public record LevelReading(String label, double inputDbfs, double outputDbfs, double reductionDb) {

  /**
   * Checks the levels.
   *
   * @param label which level this is
   * @param inputDbfs the level before the stage [dBFS]
   * @param outputDbfs the level after the stage [dBFS]
   * @param reductionDb the gain reduction [dB]
   * @throws IllegalArgumentException if the input is not finite or another number is NaN
   */
  public LevelReading {
    if (!Double.isFinite(inputDbfs) || Double.isNaN(outputDbfs) || Double.isNaN(reductionDb)) {
      throw new IllegalArgumentException(
          "a reading must have a finite input and numbers for the rest, but had "
              + inputDbfs
              + " dBFS in, "
              + outputDbfs
              + " dBFS out, "
              + reductionDb
              + " dB of reduction");
    }
  }
}
