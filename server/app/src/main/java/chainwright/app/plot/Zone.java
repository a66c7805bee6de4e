package chainwright.app.plot;

/**
 * A named part of the frequency axis, such as the sibilance of a voice.
 *
 * @param name the trade's word for it
 * @param lowHz its lower end [Hz], 0 or more
 * @param highHz its upper end [Hz], above {@code lowHz}, finite
 */
public record Zone(String name, double lowHz, double highHz) {

  /**
   * Checks the ends.
   *
   * @param name the trade's word for it
   * @param lowHz its lower end [Hz]
   * @param highHz its upper end [Hz]
   * @throws IllegalArgumentException if the ends are negative, not finite or do not rise
   */
  public Zone {
    if (!(lowHz >= 0) || !(highHz > lowHz) || Double.isInfinite(highHz)) {
      throw new IllegalArgumentException(
          "the zone `"
              + name
              + "` must reach from 0 Hz or more up to a higher frequency, but was "
              + lowHz
              + " Hz to "
              + highHz
              + " Hz");
    }
  }
}
