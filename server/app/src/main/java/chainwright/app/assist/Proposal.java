package chainwright.app.assist;

/**
 * Something that could be written at a place.
 *
 * @param text what is written
 * @param kind what it is
 * @param detail what it means, in a few words
 * @param documentation what else to know, in plain words; may be empty
 */
public record Proposal(String text, Kind kind, String detail, String documentation) {

  /** What a proposal is. */
  public enum Kind {
    /** A stage. */
    STAGE,
    /** A word of the notation. */
    WORD,
    /** A setting's name. */
    SETTING,
    /** A value with its unit, or a word that a setting takes. */
    VALUE,
    /** A name that is defined somewhere. */
    NAME
  }
}
