package chainwright.app.plot;

/**
 * The harmonics of a driven stage as a row of bars, odd and even told apart.
 *
 * @param title the heading; may be empty
 * @param fundamentalHz the frequency of the first harmonic [Hz], above 0 and finite
 * @param levelsDb the level of each harmonic relative to the fundamental [dB], the fundamental (0
 *     dB) first, 1 to 10 of them; negative infinity and NaN where a harmonic is absent
 * @param floorDb the lower end of the axis [dB], below 0 and finite
 */
public record HarmonicsPlot(String title, double fundamentalHz, Samples levelsDb, double floorDb)
    implements Plot {

  private static final int MOST_HARMONICS = 10;
  private static final double USUAL_FLOOR_DB = -100;

  /**
   * Checks the numbers.
   *
   * @param title the heading
   * @param fundamentalHz the frequency of the first harmonic [Hz]
   * @param levelsDb the level of each harmonic [dB]
   * @param floorDb the lower end of the axis [dB]
   * @throws IllegalArgumentException if the fundamental, the floor or the count is out of range
   */
  public HarmonicsPlot {
    if (!(fundamentalHz > 0) || Double.isInfinite(fundamentalHz)) {
      throw new IllegalArgumentException(
          "the fundamental must lie above 0 Hz, but was " + fundamentalHz + " Hz");
    }
    if (levelsDb.size() < 1 || levelsDb.size() > MOST_HARMONICS) {
      throw new IllegalArgumentException(
          "a plot shows 1 to " + MOST_HARMONICS + " harmonics, but was given " + levelsDb.size());
    }
    if (!(floorDb < 0) || Double.isInfinite(floorDb)) {
      throw new IllegalArgumentException(
          "the floor of the axis must lie below 0 dB, but was " + floorDb + " dB");
    }
  }

  /**
   * Returns a plot down to -100 dB.
   *
   * @param title the heading
   * @param fundamentalHz the frequency of the first harmonic [Hz]
   * @param levelsDb the level of each harmonic relative to the fundamental [dB]
   * @return the plot
   * @throws IllegalArgumentException if the fundamental or the count is out of range
   */
  public static HarmonicsPlot of(String title, double fundamentalHz, Samples levelsDb) {
    return new HarmonicsPlot(title, fundamentalHz, levelsDb, USUAL_FLOOR_DB);
  }

  /**
   * Returns the total harmonic distortion of the harmonics shown, such as 1 for a lone second
   * harmonic at -40 dB.
   *
   * <p>Source: the usual definition relative to the fundamental, the root of the summed squares of
   * harmonics 2 and up over the first; from memory of IEC 60268-3.
   *
   * @return the distortion [%], 0 or more
   */
  public double totalDistortionPercent() {
    double power = 0;
    for (int i = 1; i < levelsDb.size(); i++) {
      double level = levelsDb.get(i);
      power += Double.isNaN(level) ? 0 : Math.pow(10, level / 10);
    }
    return 100 * Math.sqrt(power);
  }

  @Override
  public <R> R accept(Visitor<R> visitor) {
    return visitor.visit(this);
  }
}
