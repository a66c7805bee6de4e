package chainwright.quantity;

/**
 * A frequency, such as 3.1 kHz.
 *
 * @param hertz the frequency [Hz], finite, 0 or more
 */
public record Frequency(double hertz) implements Quantity, Comparable<Frequency> {

  private static final double HERTZ_IN_KILOHERTZ = 1000;

  /**
   * Checks the value.
   *
   * @param hertz the frequency [Hz]
   * @throws IllegalArgumentException if the value is not finite or below 0 Hz
   */
  public Frequency {
    Quantity.requireFinite("the frequency", hertz);
    if (hertz < 0) {
      throw new IllegalArgumentException("the frequency must not be below 0 Hz, but was " + hertz);
    }
  }

  /**
   * Makes a frequency from hertz.
   *
   * @param hertz the frequency [Hz], 0 or more
   * @return the frequency
   * @throws IllegalArgumentException if the value is not finite or below 0 Hz
   */
  public static Frequency ofHertz(double hertz) {
    return new Frequency(hertz);
  }

  /**
   * Asks whether this frequency is lower than another.
   *
   * @param other the other frequency
   * @return whether it is strictly lower
   */
  public boolean isBelow(Frequency other) {
    return hertz < other.hertz;
  }

  @Override
  public double baseValue() {
    return hertz;
  }

  @Override
  public Dimension dimension() {
    return Dimension.FREQUENCY;
  }

  @Override
  public int compareTo(Frequency other) {
    return Double.compare(hertz, other.hertz);
  }

  @Override
  public String toString() {
    return hertz < HERTZ_IN_KILOHERTZ
        ? NumberText.format(hertz) + " Hz"
        : NumberText.format(hertz / HERTZ_IN_KILOHERTZ) + " kHz";
  }
}
