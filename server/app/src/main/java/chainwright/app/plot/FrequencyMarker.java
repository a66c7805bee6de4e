package chainwright.app.plot;

/**
 * A point worth a word on a frequency plot, such as "-3.0 dB at 66 Hz".
 *
 * @param frequencyHz where it lies [Hz], above 0 and finite
 * @param value its height in the plot's unit ([dB], degrees or [ms] by {@link Response}); NaN puts
 *     it on the baseline, a value off the axis at the frame
 * @param label the word
 */
public record FrequencyMarker(double frequencyHz, double value, String label) {

  /**
   * Checks the frequency.
   *
   * @param frequencyHz where it lies [Hz]
   * @param value its height
   * @param label the word
   * @throws IllegalArgumentException if the frequency is not above 0 and finite
   */
  public FrequencyMarker {
    if (!(frequencyHz > 0) || Double.isInfinite(frequencyHz)) {
      throw new IllegalArgumentException(
          "a marker's frequency must lie above 0 Hz, but was " + frequencyHz + " Hz");
    }
  }
}
