package chainwright.quantity;

/**
 * A level on one of the absolute scales, such as -18 dBFS, -1 dBTP, +4 dBu or -16 LUFS.
 *
 * <p>dBFS is referred to a full-scale sine, so that a sine whose peak is full scale reads 0 dBFS
 * both as peak and as RMS. Source: AES17-2020, 3.12.
 *
 * @param decibels the level on its scale, finite
 * @param dimension the scale: {@link Dimension#DIGITAL_LEVEL}, {@link Dimension#TRUE_PEAK_LEVEL},
 *     {@link Dimension#ANALOGUE_LEVEL} or {@link Dimension#LOUDNESS}
 */
public record Level(double decibels, Dimension dimension) implements Quantity {

  /**
   * Checks the value.
   *
   * @param decibels the level on its scale
   * @param dimension the scale
   * @throws IllegalArgumentException if the level is not finite or the dimension is no level scale
   */
  public Level {
    Quantity.requireFinite("the level", decibels);
    unitOf(dimension);
  }

  /**
   * Makes a digital level.
   *
   * @param decibels the level [dBFS], finite
   * @return the level
   * @throws IllegalArgumentException if the value is not finite
   */
  public static Level ofDbfs(double decibels) {
    return new Level(decibels, Dimension.DIGITAL_LEVEL);
  }

  /**
   * Makes an analogue level.
   *
   * @param decibels the level [dBu], finite
   * @return the level
   * @throws IllegalArgumentException if the value is not finite
   */
  public static Level ofDbu(double decibels) {
    return new Level(decibels, Dimension.ANALOGUE_LEVEL);
  }

  @Override
  public double baseValue() {
    return decibels;
  }

  @Override
  public String toString() {
    Unit unit = unitOf(dimension);
    return (unit == Unit.DBU
            ? NumberText.formatSigned(decibels, 4)
            : NumberText.format(decibels, 4))
        + " "
        + unit.symbol();
  }

  private static Unit unitOf(Dimension dimension) {
    return switch (dimension) {
      case DIGITAL_LEVEL -> Unit.DBFS;
      case TRUE_PEAK_LEVEL -> Unit.DBTP;
      case ANALOGUE_LEVEL -> Unit.DBU;
      case LOUDNESS -> Unit.LUFS;
      case FREQUENCY,
          GAIN,
          LOUDNESS_DIFFERENCE,
          SLOPE,
          RATIO,
          QUALITY,
          TIME,
          SAMPLES,
          BANDWIDTH,
          SHARE,
          COUNT,
          WORD_LENGTH,
          TEMPO,
          DISTANCE ->
          throw new IllegalArgumentException(
              "a level is in dBFS, dBTP, dBu or LUFS, not " + dimension.description());
    };
  }
}
