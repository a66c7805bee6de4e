package chainwright.app.assist;

import chainwright.notation.diagnostic.Prose;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Something that could be written at a place.
 *
 * @param text what is written
 * @param kind what it is
 * @param detail what it means, in a few words
 * @param paragraphs what else to know, in plain words; may be empty
 * @param snippet the same with stops for what has to be filled in; empty where nothing has
 * @param filter what the typed letters are compared with
 */
public record Proposal(
    String text,
    Kind kind,
    String detail,
    List<String> paragraphs,
    Optional<Snippet> snippet,
    String filter) {

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
    /** The unit of a number. */
    UNIT,
    /** A name that is defined somewhere. */
    NAME,
    /** A file. */
    FILE,
    /** A folder. */
    FOLDER
  }

  /**
   * Copies the paragraphs, and sets the words.
   *
   * @param text what is written
   * @param kind what it is
   * @param detail what it means
   * @param paragraphs what else to know
   * @param snippet the same with stops
   * @param filter what the typed letters are compared with
   */
  public Proposal {
    detail = Prose.set(detail);
    paragraphs = paragraphs.stream().map(Prose::set).toList();
  }

  /** Makes a proposal without stops that is found by its own letters; empty paragraphs are left. */
  static Proposal of(String text, Kind kind, String detail, String... paragraphs) {
    List<String> said = List.of(paragraphs).stream().filter(one -> !one.isBlank()).toList();
    return new Proposal(text, kind, detail, said, Optional.empty(), text);
  }

  /** Adds a paragraph behind the first, which says what it is. */
  Proposal withRemark(String remark) {
    List<String> more = new ArrayList<>(paragraphs);
    more.add(Math.min(1, more.size()), remark);
    return new Proposal(text, kind, detail, more, snippet, filter);
  }

  Proposal withSnippet(Snippet stops) {
    return new Proposal(text, kind, detail, paragraphs, Optional.of(stops), filter);
  }

  Proposal withText(String other) {
    return new Proposal(other, kind, detail, paragraphs, snippet, filter);
  }

  Proposal withFilter(String letters) {
    return new Proposal(text, kind, detail, paragraphs, snippet, letters);
  }
}
