package chainwright.app.explain;

import chainwright.app.page.Page;
import java.util.function.Supplier;

/**
 * Something that can be explained.
 *
 * @param kind what kind of thing it is
 * @param name the words that ask for it, such as "high-pass" or "compressor ratio"
 * @param page makes its page
 */
public record Topic(Kind kind, String name, Supplier<Page> page) {

  /** What can be explained; of two of one name the earlier kind is meant. */
  public enum Kind {
    /** A kind of stage. */
    STAGE("a stage"),
    /** A rule. */
    RULE("a rule"),
    /** A fault of the text. */
    FAULT("a fault of the text"),
    /** A kind of source. */
    SOURCE("a kind of source"),
    /** A word of the notation itself. */
    WORD("a word of the notation"),
    /** A setting. */
    SETTING("a setting"),
    /** A unit. */
    UNIT("a unit");

    private final String noun;

    Kind(String noun) {
      this.noun = noun;
    }

    /**
     * Returns how a sentence calls it.
     *
     * @return such as "a stage"
     */
    public String noun() {
      return noun;
    }
  }
}
