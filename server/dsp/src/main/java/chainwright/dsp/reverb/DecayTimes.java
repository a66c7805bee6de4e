package chainwright.dsp.reverb;

/**
 * How long a sound takes to fall by 60 dB, at each frequency.
 *
 * <p>Three figures are meant: the time at middle frequencies, between the octaves of 500 Hz and 1
 * kHz, and those at 125 Hz and 4 kHz as multiples of it. Between them the speed of the decay, which
 * is the inverse of the time, moves like the gain in dB of two flat first-order shelves, centred at
 * 250 Hz and 4 kHz; below and above it goes on until the shelves level out.
 *
 * <p>Source: the reverberation time, ISO 3382-1; its middle, low and high octaves, L. Beranek,
 * "Concert Halls and Opera Houses", bass ratio and treble ratio; both from memory. A single octave
 * at either end, and the course between, are ours.
 */
public final class DecayTimes {

  /** The middle of the two middle octaves, 500 Hz and 1 kHz [Hz]. */
  public static final double MIDDLE_HZ = Math.sqrt(500 * 1000.0);

  /** Where the bass ratio holds [Hz]. */
  public static final double BASS_HZ = 125;

  /** Where the treble ratio holds [Hz]. */
  public static final double TREBLE_HZ = 4000;

  /** The centre of the lower shelf [Hz]. */
  static final double LOW_SHELF_HZ = 250;

  /** The centre of the upper shelf [Hz]. */
  static final double HIGH_SHELF_HZ = 4000;

  /** Where no more is to come [Hz]. */
  private static final double HIGHEST_HZ = 200_000;

  private final double middleSeconds;
  private final Course dbPerSecond;

  /**
   * Solves for the course of the decay.
   *
   * @param middleSeconds the time at middle frequencies [s], finite, above 0
   * @param bassRatio the time at 125 Hz as a multiple of it, 0.5 to 2
   * @param trebleRatio the time at 4 kHz as a multiple of it, 0.2 to 1.2
   * @throws IllegalArgumentException if a number is outside its range
   */
  public DecayTimes(double middleSeconds, double bassRatio, double trebleRatio) {
    if (!(middleSeconds > 0)
        || Double.isInfinite(middleSeconds)
        || !(bassRatio >= 0.5 && bassRatio <= 2)
        || !(trebleRatio >= 0.2 && trebleRatio <= 1.2)) {
      throw new IllegalArgumentException(
          "the decay must be finite and above 0 s, the bass ratio lie between 0.5 and 2 and the"
              + " treble ratio between 0.2 and 1.2, but were "
              + middleSeconds
              + " s, "
              + bassRatio
              + " and "
              + trebleRatio);
    }
    Course course =
        Course.through(
            60 / middleSeconds / bassRatio, 60 / middleSeconds, 60 / middleSeconds / trebleRatio);
    this.middleSeconds = middleSeconds;
    this.dbPerSecond = course;
  }

  /**
   * Returns the time at middle frequencies.
   *
   * @return the time [s]
   */
  public double middleSeconds() {
    return middleSeconds;
  }

  /**
   * Returns the time in which a sound of this frequency falls by 60 dB.
   *
   * @param hertz the frequency [Hz], ≥ 0
   * @return the time [s], above 0
   */
  public double secondsAt(double hertz) {
    return 60 / dbPerSecond.at(hertz);
  }

  /**
   * Returns the longest time of all frequencies.
   *
   * @return the time [s]
   */
  public double longestSeconds() {
    double longest = Math.max(secondsAt(0), secondsAt(HIGHEST_HZ));
    for (double hertz = 10; hertz < HIGHEST_HZ; hertz *= 1.06) {
      longest = Math.max(longest, secondsAt(hertz));
    }
    return longest;
  }

  /** How fast the sound falls at each frequency [dB/s]. */
  Course dbPerSecond() {
    return dbPerSecond;
  }

  /**
   * A course over frequency: a flat part, and what low and high frequencies have besides.
   *
   * @param flat what all frequencies have
   * @param low what low frequencies have besides
   * @param high what high frequencies have besides
   */
  record Course(double flat, double low, double high) {

    /** Returns the course through three values, by Cramer's rule on their differences. */
    static Course through(double atBass, double atMiddle, double atTreble) {
      double bassLow = lowShare(BASS_HZ) - lowShare(MIDDLE_HZ);
      double bassHigh = highShare(BASS_HZ) - highShare(MIDDLE_HZ);
      double trebleLow = lowShare(TREBLE_HZ) - lowShare(MIDDLE_HZ);
      double trebleHigh = highShare(TREBLE_HZ) - highShare(MIDDLE_HZ);
      double bass = atBass - atMiddle;
      double treble = atTreble - atMiddle;
      double determinant = bassLow * trebleHigh - bassHigh * trebleLow;
      double low = (bass * trebleHigh - bassHigh * treble) / determinant;
      double high = (bassLow * treble - bass * trebleLow) / determinant;
      double flat = atMiddle - low * lowShare(MIDDLE_HZ) - high * highShare(MIDDLE_HZ);
      return new Course(flat, low, high);
    }

    double at(double hertz) {
      return flat + low * lowShare(hertz) + high * highShare(hertz);
    }

    Course plus(Course other, double factor) {
      return new Course(
          flat + factor * other.flat, low + factor * other.low, high + factor * other.high);
    }

    private static double lowShare(double hertz) {
      return 1 / (1 + Math.pow(hertz / LOW_SHELF_HZ, 2));
    }

    private static double highShare(double hertz) {
      return 1 - 1 / (1 + Math.pow(hertz / HIGH_SHELF_HZ, 2));
    }
  }
}
