package chainwright.app.assist;

import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is known of the line that is being written.
 *
 * @param around what stands around it
 * @param head the first word of the statement; empty text where that word is being written
 * @param before what stands between the first word and the one that is being written
 * @param after what stands behind it, to the end of the statement
 * @param typed what is written already of the word, up to the caret, from the section's start
 * @param wordEnd where the word ends that would be replaced, a number with its unit
 * @param word the text of the whole word, on both sides of the caret
 * @param isQuoted whether the caret stands in a text in quotes; {@code typed} is what stands in it
 * @param isOpenQuote whether that text has no closing quote yet
 * @param tail what has to follow an insertion so that it does not touch what stands behind
 * @param isAtEnd whether nothing follows the word in its statement
 * @param isTouchingNumber whether the word stands right behind a number, so that it can only be its
 *     unit
 */
public record WrittenLine(
    Surroundings around,
    String head,
    List<Item> before,
    List<Item> after,
    TextSpan typed,
    int wordEnd,
    String word,
    boolean isQuoted,
    boolean isOpenQuote,
    String tail,
    boolean isAtEnd,
    boolean isTouchingNumber) {

  /**
   * What stands around a line.
   *
   * @param blocks the words that opened the blocks around it, innermost first
   * @param owner the name of the chain, bus or preset around it; empty text where it has none
   * @param source the kind of source declared there
   * @param above the first words of the statements above it in its block, each once
   * @param below the first words of the statements below it in its block, each once
   * @param previous what stands behind the first word of the statement just above
   */
  public record Surroundings(
      List<String> blocks,
      String owner,
      Optional<String> source,
      List<String> above,
      List<String> below,
      List<Item> previous) {

    /**
     * Copies the lists.
     *
     * @param blocks the words that opened the blocks
     * @param owner the name of what is around it
     * @param source the kind of source
     * @param above the words above
     * @param below the words below
     * @param previous what stands in the statement just above
     */
    public Surroundings {
      blocks = List.copyOf(blocks);
      above = List.copyOf(above);
      below = List.copyOf(below);
      previous = List.copyOf(previous);
    }

    /** The word that opened the innermost block; empty text at the top of a file. */
    String block() {
      return blocks.isEmpty() ? "" : blocks.get(0);
    }

    boolean holds(String word) {
      return above.contains(word) || below.contains(word);
    }
  }

  /**
   * Copies the lists.
   *
   * @param around what stands around it
   * @param head the first word
   * @param before what stands before
   * @param after what stands behind
   * @param typed what is written of the word
   * @param wordEnd where the word ends
   * @param word the whole word
   * @param isQuoted whether it is in quotes
   * @param isOpenQuote whether the quote is open
   * @param tail what has to follow
   * @param isAtEnd whether nothing follows
   * @param isTouchingNumber whether it stands right behind a number
   */
  public WrittenLine {
    before = List.copyOf(before);
    after = List.copyOf(after);
  }

  /**
   * Reads what stands around the caret.
   *
   * @param section the section that holds the caret
   * @param caret its offset in the section
   * @return what is known; empty inside a comment or a note, and where nothing can be written
   */
  public static Optional<WrittenLine> of(Section section, int caret) {
    return new CaretSearch(section, caret).search();
  }

  /**
   * Asks whether the name of a rule is being written.
   *
   * @return whether `deliberate` stands right before the caret's word
   */
  public boolean isAtRule() {
    return last()
        .filter(item -> item instanceof Item.Word word && word.text().equals("deliberate"))
        .isPresent();
  }

  /** What is written already of the word, up to the caret. */
  String prefix() {
    return word.substring(0, typed.length());
  }

  /** The words before the caret's word, the first word of the statement first. */
  List<String> words() {
    List<String> words = new ArrayList<>(List.of(head));
    for (Item item : before) {
      if (item instanceof Item.Word word) {
        words.add(word.text());
      }
    }
    return words;
  }

  /** The last thing before the caret's word. */
  Optional<Item> last() {
    return before.isEmpty() ? Optional.empty() : Optional.of(before.get(before.size() - 1));
  }

  /** The number right before the caret's word, if it has no unit. */
  Optional<Item.Amount> bareNumber() {
    return last()
        .filter(Item.Amount.class::isInstance)
        .map(Item.Amount.class::cast)
        .filter(amount -> amount.unit().isEmpty());
  }

  /** Whether a number is being written. */
  boolean isNumber() {
    String prefix = prefix();
    return !prefix.isEmpty() && "+-\u2212\u2013.0123456789".indexOf(prefix.charAt(0)) >= 0;
  }
}
