package chainwright.notation.format;

import chainwright.notation.syntax.Spread;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * Brings a text into its canonical layout. The result says the same as the text did, has every
 * comment, and is its own canonical layout. A line with an error keeps its characters and gets only
 * its indentation.
 *
 * <p>Every section is laid out by itself; the results depend on the text alone.
 */
public final class Formatting {

  private Formatting() {}

  /**
   * Returns the whole text in its canonical layout.
   *
   * @param tree the tree of the text
   * @return the formatted text; it ends with one line end unless it is empty
   */
  public static String format(SyntaxTree tree) {
    Output output = new Output(tree);
    for (int i = 0; i < tree.sections().size(); i++) {
      output.section(i);
    }
    return output.text();
  }

  /**
   * Returns the edits that bring the whole text into its canonical layout, each as small as
   * possible, so that carets elsewhere stay where they are.
   *
   * @param tree the tree of the text
   * @return edits in the text's offsets that do not overlap, ascending; empty if all is well
   */
  public static List<TextEdit> edits(SyntaxTree tree) {
    return edits(tree, new TextSpan(0, tree.text().length()), Spread.IN_TURN);
  }

  /**
   * Returns the edits of {@link #edits(SyntaxTree)} that lie on the lines that a range touches.
   *
   * @param tree the tree of the text
   * @param range the range, in the text's offsets
   * @param spread how many sections are laid out
   * @return edits in the text's offsets that do not overlap, ascending
   * @throws IllegalArgumentException if the range ends after the text
   */
  public static List<TextEdit> edits(SyntaxTree tree, TextSpan range, Spread spread) {
    requireInside(tree, range.end());
    TextSpan lines = wholeLines(tree.text(), range);
    List<Integer> sections = new ArrayList<>();
    int last = tree.sectionAt(lines.end());
    for (int i = tree.sectionAt(lines.start()); i <= last; i++) {
      sections.add(i);
    }
    Output joined = new Output(tree);
    for (List<TextEdit> edits : spread.map(sections, section -> editsOf(tree, section))) {
      joined.addAll(edits);
    }
    List<TextEdit> inside = new ArrayList<>();
    for (TextEdit edit : joined.edits()) {
      if (lines.contains(edit.span())) {
        inside.add(edit);
      }
    }
    return inside;
  }

  private static List<TextEdit> editsOf(SyntaxTree tree, int section) {
    Output output = new Output(tree);
    output.section(section);
    return output.edits();
  }

  /**
   * Returns the edit that indents one line, for use while its author types: after a line end the
   * indentation of a new line, after <code>}</code> that of its block.
   *
   * @param tree the tree of the text
   * @param offset an offset on the line
   * @return one edit, or none if the indentation is right
   * @throws IllegalArgumentException if the offset lies outside the text
   */
  public static List<TextEdit> indentation(SyntaxTree tree, int offset) {
    requireInside(tree, offset);
    String text = tree.text();
    TextSpan line = wholeLines(text, new TextSpan(offset, offset));
    int contentStart = line.start();
    while (contentStart < line.end() && isBlank(text.charAt(contentStart))) {
      contentStart++;
    }
    int section = tree.sectionAt(line.start());
    int sectionStart = tree.startOf(section);
    int indent = 0;
    for (Piece piece : SectionLayout.of(tree.sections().get(section))) {
      if (piece.start + sectionStart >= contentStart) {
        if (piece.start + sectionStart == contentStart && contentStart < line.end()) {
          indent = piece.isLineStart ? piece.blanks() : indent;
        }
        break;
      }
      indent = piece.memberIndent;
    }
    String wanted = " ".repeat(indent);
    TextSpan old = new TextSpan(line.start(), contentStart);
    return text.substring(old.start(), old.end()).equals(wanted)
        ? List.of()
        : List.of(new TextEdit(old, wanted));
  }

  private static void requireInside(SyntaxTree tree, int offset) {
    if (offset < 0 || offset > tree.text().length()) {
      throw new IllegalArgumentException(
          "the offset must lie between 0 and " + tree.text().length() + ", but was " + offset);
    }
  }

  private static TextSpan wholeLines(String text, TextSpan range) {
    int start = range.start();
    while (start > 0 && !isLineEnd(text.charAt(start - 1))) {
      start--;
    }
    int end = range.end();
    while (end < text.length() && !isLineEnd(text.charAt(end))) {
      end++;
    }
    return new TextSpan(start, end);
  }

  private static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }

  private static boolean isBlank(char c) {
    return !isLineEnd(c) && (Character.isWhitespace(c) || Character.isSpaceChar(c));
  }
}
