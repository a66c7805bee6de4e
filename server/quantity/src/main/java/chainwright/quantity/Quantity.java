package chainwright.quantity;

/**
 * A value with its meaning, such as 66 Hz or 3:1.
 *
 * <p>Each kind is a record of its own, so that a cutoff cannot be handed to a slope. {@link
 * #baseValue()} is for tables and ranges that treat all kinds alike.
 */
public sealed interface Quantity
    permits Bandwidth,
        Count,
        Decibels,
        Distance,
        Frequency,
        Level,
        LoudnessDifference,
        QualityFactor,
        Ratio,
        SampleCount,
        Share,
        Slope,
        Tempo,
        TimeSpan,
        WordLength {

  /**
   * Returns the value in the base unit of its dimension, such as 3100 for 3.1 kHz.
   *
   * @return the value, finite
   */
  double baseValue();

  /**
   * Returns what kind of value this is.
   *
   * @return the dimension
   */
  Dimension dimension();

  /**
   * Makes a quantity from a number in the base unit of a dimension.
   *
   * @param dimension what kind of value it is
   * @param baseValue the number in the dimension's base unit
   * @return the quantity
   * @throws IllegalArgumentException if no such quantity exists, such as a frequency below 0 Hz
   */
  static Quantity of(Dimension dimension, double baseValue) {
    return switch (dimension) {
      case FREQUENCY -> new Frequency(baseValue);
      case GAIN -> new Decibels(baseValue);
      case DIGITAL_LEVEL, TRUE_PEAK_LEVEL, ANALOGUE_LEVEL, LOUDNESS ->
          new Level(baseValue, dimension);
      case LOUDNESS_DIFFERENCE -> new LoudnessDifference(baseValue);
      case SLOPE -> new Slope(baseValue);
      case RATIO -> new Ratio(baseValue);
      case QUALITY -> new QualityFactor(baseValue);
      case TIME -> new TimeSpan(baseValue);
      case SAMPLES -> new SampleCount(baseValue);
      case BANDWIDTH -> new Bandwidth(baseValue);
      case SHARE -> new Share(baseValue);
      case COUNT -> new Count(baseValue);
      case WORD_LENGTH -> new WordLength(baseValue);
      case TEMPO -> new Tempo(baseValue);
      case DISTANCE -> new Distance(baseValue);
    };
  }

  /**
   * Checks that a number is finite, for the constructors of quantities.
   *
   * @param what the name of the value in the message, such as "the slope"
   * @param value the number
   * @return the same number
   * @throws IllegalArgumentException if it is NaN or infinite
   */
  static double requireFinite(String what, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(what + " must be finite, but was " + value);
    }
    return value;
  }
}
