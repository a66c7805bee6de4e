package chainwright.notation.format;

import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;

/** Writes laid-out sections, as a text and as edits of the old text. */
final class Output {

  private final SyntaxTree tree;
  private final String lineEnd;
  private final StringBuilder text = new StringBuilder();
  private final List<TextEdit> edits = new ArrayList<>();

  Output(SyntaxTree tree) {
    this.tree = tree;
    this.lineEnd = firstLineEnd(tree.text());
  }

  String text() {
    return text.toString();
  }

  List<TextEdit> edits() {
    return edits;
  }

  /** Adds the edits of sections that stand behind those added before. */
  void addAll(List<TextEdit> later) {
    for (TextEdit edit : later) {
      add(edit.span(), edit.newText());
    }
  }

  /** Adds a section of the tree. */
  void section(int index) {
    Section section = tree.sections().get(index);
    int textBefore = text.length();
    int editsBefore = edits.size();
    write(section, index);
    if (!section.troubles().isEmpty() && !Shape.isSame(section, text.substring(textBefore))) {
      // Where braces are missing, indentation says where they belong: it must not be touched.
      text.setLength(textBefore);
      text.append(section.text());
      edits.subList(editsBefore, edits.size()).clear();
    }
  }

  private void write(Section section, int index) {
    String old = section.text();
    int start = tree.startOf(index);
    List<Piece> pieces = SectionLayout.of(section);
    int at = 0;
    for (Piece piece : pieces) {
      if (isRightGap(piece, old, at)) {
        text.append(old, at, piece.start);
      } else {
        replace(old, start, at, piece.start, gap(piece, old, at));
      }
      replace(old, start, piece.start, piece.end(), piece.text);
      at = piece.end();
    }
    boolean isLast = index == tree.sections().size() - 1;
    String end = pieces.isEmpty() ? "" : lineEnd(old, at).repeat(isLast ? 1 : blankLines(old, at));
    replace(old, start, at, old.length(), end);
  }

  /** Whether a gap is what it should be; most are, and need no copy to compare with. */
  private static boolean isRightGap(Piece piece, String old, int gapStart) {
    if (piece.isKept && !piece.isLineStart) {
      return true;
    }
    int breaks = piece.isLineStart ? piece.breaks : 0;
    if (piece.start - gapStart != breaks + piece.blanks()) {
      return false;
    }
    for (int i = gapStart; i < piece.start; i++) {
      if (old.charAt(i) != (i < gapStart + breaks ? '\n' : ' ')) {
        return false;
      }
    }
    return true;
  }

  private String gap(Piece piece, String old, int gapStart) {
    if (piece.isLineStart) {
      return lineEnd(old, gapStart).repeat(piece.breaks) + " ".repeat(piece.blanks());
    }
    return piece.isKept ? old.substring(gapStart, piece.start) : " ".repeat(piece.blanks());
  }

  /** The line end at the start of a gap of blanks, or that of the whole text. */
  private String lineEnd(String old, int gapStart) {
    for (int i = gapStart; i < old.length(); i++) {
      char c = old.charAt(i);
      if (c == '\n') {
        return "\n";
      }
      if (c == '\r') {
        return i + 1 < old.length() && old.charAt(i + 1) == '\n' ? "\r\n" : "\r";
      }
      if (c > ' ' && c < '\u0080') {
        break;
      }
    }
    return lineEnd;
  }

  private static int blankLines(String old, int from) {
    int count = 0;
    for (int i = from; i < old.length(); i++) {
      char c = old.charAt(i);
      boolean isPair = c == '\r' && i + 1 < old.length() && old.charAt(i + 1) == '\n';
      if ((c == '\n' || c == '\r') && !isPair) {
        count++;
      }
    }
    return Math.min(2, count);
  }

  private void replace(String old, int sectionStart, int from, int to, String replacement) {
    text.append(replacement);
    int length = replacement.length();
    if (to - from == length && old.startsWith(replacement, from)) {
      return;
    }
    int same = 0;
    int most = Math.min(to - from, length);
    while (same < most && old.charAt(from + same) == replacement.charAt(same)) {
      same++;
    }
    int sameEnd = 0;
    while (sameEnd < most - same
        && old.charAt(to - 1 - sameEnd) == replacement.charAt(length - 1 - sameEnd)) {
      sameEnd++;
    }
    add(
        new TextSpan(sectionStart + from + same, sectionStart + to - sameEnd),
        replacement.substring(same, length - sameEnd));
  }

  /**
   * Adds an edit, joined to the one before it if they touch: editors order insertions variously.
   */
  private void add(TextSpan span, String newText) {
    int last = edits.size() - 1;
    if (last >= 0 && edits.get(last).span().end() == span.start()) {
      TextEdit before = edits.get(last);
      edits.set(last, new TextEdit(before.span().union(span), before.newText() + newText));
    } else {
      edits.add(new TextEdit(span, newText));
    }
  }

  private static String firstLineEnd(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\n') {
        return "\n";
      }
      if (c == '\r') {
        return i + 1 < text.length() && text.charAt(i + 1) == '\n' ? "\r\n" : "\r";
      }
    }
    return "\n";
  }
}
