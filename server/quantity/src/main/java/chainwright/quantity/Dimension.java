package chainwright.quantity;

/**
 * What kind of value a quantity is. Two units convert into each other only inside one dimension.
 */
public enum Dimension {
  /** How often a second; base unit hertz. */
  FREQUENCY("a frequency in Hz or kHz"),
  /** A gain, a difference of levels or an amount of reduction; base unit decibel. */
  GAIN("an amount in dB"),
  /** A digital level against a full-scale sine; base unit dBFS. */
  DIGITAL_LEVEL("a level in dBFS"),
  /** A true-peak level, ITU-R BS.1770 Annex 2; base unit dBTP. */
  TRUE_PEAK_LEVEL("a true-peak level in dBTP"),
  /** An analogue level against 0.7746 V; base unit dBu. */
  ANALOGUE_LEVEL("an analogue level in dBu"),
  /** A loudness, ITU-R BS.1770; base unit LUFS. */
  LOUDNESS("a loudness in LUFS"),
  /** A difference of loudness; base unit LU. */
  LOUDNESS_DIFFERENCE("a loudness difference in LU"),
  /** The asymptotic roll-off of a filter; base unit dB/oct. */
  SLOPE("a slope in dB/oct"),
  /** Input change to output change of a dynamics stage; base {@code n:1}. */
  RATIO("a ratio such as 3:1"),
  /** The quality factor of a resonance; no unit. */
  QUALITY("a quality factor such as Q 1.4"),
  /** A span of time or a position in a recording; base unit second. */
  TIME("a time in us, ms or s, or a position such as 0:31.2"),
  /** A span counted in samples; base unit one sample. */
  SAMPLES("a number of samples"),
  /** A width on the frequency axis; base unit octave. */
  BANDWIDTH("a width in oct"),
  /** A share of a whole; base unit per cent. */
  SHARE("a share in %"),
  /** A plain count; no unit. */
  COUNT("a plain number"),
  /** The length of a digital word; base unit bit. */
  WORD_LENGTH("a word length in bit"),
  /** A musical speed; base unit beats a minute. */
  TEMPO("a tempo in bpm"),
  /** A length in space; base unit metre. */
  DISTANCE("a distance in m");

  private final String description;

  Dimension(String description) {
    this.description = description;
  }

  /**
   * Returns the words in which a message asks for such a value, such as "a slope in dB/oct".
   *
   * @return a noun phrase
   */
  public String description() {
    return description;
  }
}
