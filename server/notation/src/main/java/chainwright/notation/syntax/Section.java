package chainwright.notation.syntax;

import chainwright.notation.fault.Fault;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;

/**
 * A part of a file that is parsed by itself: one top-level statement with the lines up to the next.
 *
 * <p>Sections are compared by identity: an edit elsewhere keeps the object, so whoever computes
 * something from a section may keep the result as long as the object lives. All offsets inside
 * count from the section's start.
 */
public final class Section {

  /**
   * Something the parser could not understand.
   *
   * @param fault what it is
   * @param span the tightest span, from the section's start
   * @param what what was found
   * @param remedy what was expected and what to do
   * @param mend the edits that together mend it; empty where none is sure to
   * @param isUnread whether a value stands there that cannot be read before it is mended; else
   *     everything around has its meaning, and mending keeps it
   */
  public record Trouble(
      Fault fault,
      TextSpan span,
      String what,
      String remedy,
      List<TextEdit> mend,
      boolean isUnread) {

    /**
     * Copies the edits.
     *
     * @param fault what it is
     * @param span the tightest span
     * @param what what was found
     * @param remedy what to do
     * @param mend the edits
     * @param isUnread whether a value stands there that cannot be read
     */
    public Trouble {
      mend = List.copyOf(mend);
    }
  }

  private final String text;
  private final SyntaxNode root;
  private final List<Trouble> troubles;

  Section(String text, SyntaxNode root, List<Trouble> troubles) {
    this.text = text;
    this.root = root;
    this.troubles = List.copyOf(troubles);
  }

  /**
   * Asks whether a word begins a section wherever it begins a line, such as "chain".
   *
   * @param word any word
   * @return whether it is one of the five top-level words
   */
  public static boolean isBegunBy(String word) {
    return SectionSplitter.TOP_LEVEL_WORDS.contains(word);
  }

  /**
   * Returns the section's text.
   *
   * @return every character of it
   */
  public String text() {
    return text;
  }

  /**
   * Returns how many characters the section has.
   *
   * @return the length [UTF-16 units]
   */
  public int length() {
    return text.length();
  }

  /**
   * Returns the tree.
   *
   * @return a node of kind {@link SyntaxKind#SECTION} over the whole text
   */
  public SyntaxNode root() {
    return root;
  }

  /**
   * Returns what the parser could not understand.
   *
   * @return the troubles, in the order of the text
   */
  public List<Trouble> troubles() {
    return troubles;
  }
}
