package chainwright.app.plot;

/** What a frequency plot shows over the frequency. */
public enum Response {
  /** The gain [dB]. */
  MAGNITUDE("gain", "dB"),
  /** The phase [degrees]; a lag is negative. */
  PHASE("phase", "deg"),
  /** The group delay [ms]. */
  GROUP_DELAY("group delay", "ms");

  private final String words;
  private final String unit;

  Response(String words, String unit) {
    this.words = words;
    this.unit = unit;
  }

  /**
   * Returns the trade's words, such as {@code group delay}.
   *
   * @return the words in lower case
   */
  public String words() {
    return words;
  }

  /**
   * Returns the unit's sign, such as {@code dB}.
   *
   * @return the sign
   */
  public String unit() {
    return unit;
  }
}
