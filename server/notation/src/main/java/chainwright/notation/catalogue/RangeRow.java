package chainwright.notation.catalogue;

import java.util.Set;

/**
 * A range and whom it is for. Of the rows of a setting the first that fits wins.
 *
 * @param sources the words of the source kinds it is for; empty for any
 * @param direction for which sign of the stage's gain it holds
 * @param range the range
 */
public record RangeRow(Set<String> sources, Direction direction, TradeRange range) {

  /** The sign of the stage's gain that a row is for. */
  public enum Direction {
    /** Either sign. */
    ANY(""),
    /** A gain below 0 dB. */
    CUT(" for a cut"),
    /** A gain of 0 dB or more. */
    BOOST(" for a boost");

    private final String inWords;

    Direction(String inWords) {
      this.inWords = inWords;
    }

    /**
     * Returns how a sentence says for what a range is given.
     *
     * @return such as " for a cut", with the blank before it; empty if it holds for either
     */
    public String inWords() {
      return inWords;
    }
  }

  /**
   * Copies the sources.
   *
   * @param sources the source kinds
   * @param direction the sign
   * @param range the range
   */
  public RangeRow {
    sources = Set.copyOf(sources);
  }
}
