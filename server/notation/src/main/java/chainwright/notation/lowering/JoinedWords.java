package chainwright.notation.lowering;

import chainwright.notation.syntax.Item;
import chainwright.notation.text.TextSpan;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Words with blanks between them that are one word with hyphens.
 *
 * @param text the words in lower case, joined by hyphens
 * @param span where they stand
 * @param count how many they are, at least two
 */
record JoinedWords(String text, TextSpan span, int count) {

  /**
   * Finds the most words in a row that are wanted, joined.
   *
   * @param items what stands on a line
   * @param from the index of the first word
   * @param isWanted tells of a joined word whether it means something
   * @return the words, at least two; empty if none are wanted
   */
  static Optional<JoinedWords> at(List<Item> items, int from, Predicate<String> isWanted) {
    Optional<JoinedWords> found = Optional.empty();
    StringBuilder text = new StringBuilder();
    for (int i = from; i < items.size() && items.get(i) instanceof Item.Word word; i++) {
      text.append(i == from ? "" : "-").append(word.text().toLowerCase(Locale.ROOT));
      if (i > from && isWanted.test(text.toString())) {
        TextSpan span = items.get(from).span().union(word.span());
        found = Optional.of(new JoinedWords(text.toString(), span, i - from + 1));
      }
    }
    return found;
  }
}
