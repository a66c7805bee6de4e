package chainwright.notation.text;

import java.util.Comparator;
import java.util.List;

/**
 * The replacement of one stretch of a text by another.
 *
 * @param span what is replaced; empty for an insertion
 * @param newText what stands there afterwards; empty for a removal
 */
public record TextEdit(TextSpan span, String newText) {

  /**
   * Returns the text after several edits that do not overlap, all given in offsets of the old text.
   *
   * @param text the old text
   * @param edits the edits, in any order; insertions at one place apply in the order given
   * @return the new text
   * @throws IllegalArgumentException if two edits overlap or one lies outside the text
   */
  public static String apply(String text, List<TextEdit> edits) {
    List<TextEdit> ordered =
        edits.stream().sorted(Comparator.comparingInt(edit -> edit.span().start())).toList();
    StringBuilder result = new StringBuilder(text.length() + 64);
    int copied = 0;
    for (TextEdit edit : ordered) {
      if (edit.span().start() < copied || edit.span().end() > text.length()) {
        throw new IllegalArgumentException("edits must not overlap, but one is " + edit);
      }
      result.append(text, copied, edit.span().start()).append(edit.newText());
      copied = edit.span().end();
    }
    return result.append(text, copied, text.length()).toString();
  }
}
