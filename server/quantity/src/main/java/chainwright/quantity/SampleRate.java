package chainwright.quantity;

/**
 * How many samples of each channel a second holds, such as 48 kHz.
 *
 * @param hertz the rate [Hz], from 8000 to 384000
 */
public record SampleRate(double hertz) {

  /** The rate that is used where none is declared: 48 kHz. */
  public static final SampleRate DEFAULT = new SampleRate(48_000);

  /** The lowest rate that is accepted [Hz]. */
  public static final double LOWEST_HZ = 8_000;

  /** The highest rate that is accepted [Hz]. */
  public static final double HIGHEST_HZ = 384_000;

  /**
   * Checks the value.
   *
   * @param hertz the rate [Hz]
   * @throws IllegalArgumentException if the rate is not between 8 kHz and 384 kHz
   */
  public SampleRate {
    if (!(hertz >= LOWEST_HZ && hertz <= HIGHEST_HZ)) {
      throw new IllegalArgumentException(
          "the sample rate must lie between 8 kHz and 384 kHz, but was " + hertz + " Hz");
    }
  }

  /**
   * Makes a sample rate from hertz.
   *
   * @param hertz the rate [Hz], from 8000 to 384000
   * @return the rate
   * @throws IllegalArgumentException if the rate is not between 8 kHz and 384 kHz
   */
  public static SampleRate ofHertz(double hertz) {
    return new SampleRate(hertz);
  }

  /**
   * Returns half the rate, above which no frequency can be represented.
   *
   * @return the Nyquist frequency
   */
  public Frequency nyquist() {
    return Frequency.ofHertz(hertz / 2);
  }

  @Override
  public String toString() {
    return Frequency.ofHertz(hertz).toString();
  }
}
