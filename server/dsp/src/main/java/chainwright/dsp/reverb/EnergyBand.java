package chainwright.dsp.reverb;

/**
 * A band whose energy is taken together, as that of a click, which has equally much at every
 * frequency.
 *
 * @param lowHz its lower end [Hz], above 0
 * @param highHz its upper end [Hz], above the lower
 */
public record EnergyBand(double lowHz, double highHz) {

  /** Dense enough that the energy of any of our decays is exact to 0.1 dB down to −80 dB. */
  private static final int PLACES_PER_OCTAVE = 6;

  /**
   * Checks the ends.
   *
   * @param lowHz its lower end [Hz]
   * @param highHz its upper end [Hz]
   * @throws IllegalArgumentException if the ends are not above 0 and rising
   */
  public EnergyBand {
    if (!(lowHz > 0) || !(highHz > lowHz) || Double.isInfinite(highHz)) {
      throw new IllegalArgumentException(
          "the ends of a band must be finite, above 0 Hz and rise, but were "
              + lowHz
              + " and "
              + highHz);
    }
  }

  /**
   * Returns the band from one octave to another, both included.
   *
   * <p>Source: octaves reach a factor of √2 to either side, IEC 61260-1; from memory.
   *
   * @param firstHz the centre of the lowest octave [Hz]
   * @param lastHz the centre of the highest octave [Hz]
   * @return the band
   */
  public static EnergyBand ofOctaves(double firstHz, double lastHz) {
    return new EnergyBand(firstHz / Math.sqrt(2), lastHz * Math.sqrt(2));
  }

  /**
   * Returns what of the band lies below a frequency.
   *
   * @param hertz the frequency [Hz], above the lower end
   * @return the band, or a narrower one
   */
  public EnergyBand below(double hertz) {
    return new EnergyBand(lowHz, Math.min(highHz, hertz));
  }

  /** Returns the places that stand for the band [Hz]. */
  double[] places() {
    double octaves = Math.log(highHz / lowHz) / Math.log(2);
    double[] places = new double[(int) Math.max(1, Math.round(PLACES_PER_OCTAVE * octaves))];
    for (int i = 0; i < places.length; i++) {
      places[i] = lowHz * Math.pow(2, octaves * (i + 0.5) / places.length);
    }
    return places;
  }

  /** Returns the share of the band's energy that a click has about each place. */
  double[] shares() {
    double[] shares = places();
    double sum = 0;
    for (double hertz : shares) {
      sum += hertz;
    }
    for (int i = 0; i < shares.length; i++) {
      shares[i] /= sum;
    }
    return shares;
  }
}
