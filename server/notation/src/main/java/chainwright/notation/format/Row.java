package chainwright.notation.format;

import chainwright.notation.syntax.ReservedWords;
import chainwright.notation.syntax.SyntaxKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * What stands on one line of a statement, in cells: a setting with its value is one cell, a value
 * without a name another.
 *
 * @param head the first piece of the line: the statement's word, or a continuation mark
 * @param cells the cells after it
 */
record Row(Piece head, List<Cell> cells) {

  /** Settings of every kind of stage whose value is a word. */
  private static final Set<String> WORD_VALUED = Set.of("key", "curve");

  /** What a part of a line is, as far as it matters for columns. */
  enum PartKind {
    WORD,
    VALUE,
    TEXT,
    MARK
  }

  /**
   * A word, value, text or mark.
   *
   * @param kind what it is
   * @param shape its word, or the dimension of its value
   * @param first its first piece
   * @param width how wide it will be [characters]
   */
  record Part(PartKind kind, String shape, Piece first, int width) {}

  /**
   * A cell.
   *
   * @param first its first piece
   * @param shape what it holds: cells of one shape may share a column
   * @param width how wide it will be [characters]
   * @param isNamed whether it is a setting's name with its value
   * @param isTail whether it belongs to the end of the stage and is in no column
   */
  record Cell(Piece first, String shape, int width, boolean isNamed, boolean isTail) {}

  /** Whether the line continues a statement. */
  boolean isContinuation() {
    return head.kind == SyntaxKind.CONTINUATION;
  }

  /** Groups the parts of a line into cells. */
  static Row of(Piece head, List<Part> parts) {
    List<Cell> cells = new ArrayList<>();
    boolean isTail = false;
    int index = 0;
    while (index < parts.size()) {
      Part part = parts.get(index);
      int end = index + 1;
      isTail |= part.kind() == PartKind.WORD && ReservedWords.isTailMark(part.shape());
      if (part.kind() == PartKind.VALUE && isKind(parts, end, PartKind.MARK)) {
        end = Math.min(parts.size(), end + 2);
      } else if (index == 0 && ReservedWords.isNamingStatement(head.text)) {
        end = endOfBareWords(parts, end);
      } else if (part.kind() == PartKind.WORD) {
        end = endOfWords(parts, index);
      }
      cells.add(cell(parts.subList(index, end), isTail));
      index = end;
    }
    return new Row(head, cells);
  }

  /**
   * Where the cell of a word ends: after its value if it has one. Words without one stay together,
   * as nothing here says which of them is a name.
   */
  private static int endOfWords(List<Part> parts, int start) {
    String word = parts.get(start).shape();
    int end = start + 1;
    if (word.equals("bypassed") || isValue(parts, end)) {
      return word.equals("bypassed") ? end : end + 1;
    }
    if (ReservedWords.isTailMark(word) || WORD_VALUED.contains(word)) {
      end = isKind(parts, end, PartKind.WORD) ? end + 1 : end;
      return word.equals("deliberate") && isKind(parts, end, PartKind.TEXT) ? end + 1 : end;
    }
    return endOfBareWords(parts, end);
  }

  private static int endOfBareWords(List<Part> parts, int start) {
    int end = start;
    while (isKind(parts, end, PartKind.WORD)
        && !isValue(parts, end + 1)
        && !ReservedWords.isTailMark(parts.get(end).shape())
        && !WORD_VALUED.contains(parts.get(end).shape())) {
      end++;
    }
    return end;
  }

  private static Cell cell(List<Part> parts, boolean isTail) {
    int width = parts.size() - 1;
    for (Part part : parts) {
      width += part.width();
    }
    Part first = parts.get(0);
    boolean isNamed = parts.size() > 1 && first.kind() == PartKind.WORD;
    String shape = first.shape();
    if (first.kind() == PartKind.WORD) {
      shape = isNamed ? "name " + first.shape() : "word";
    }
    return new Cell(first.first(), shape, width, isNamed, isTail);
  }

  private static boolean isValue(List<Part> parts, int index) {
    return isKind(parts, index, PartKind.VALUE) || isKind(parts, index, PartKind.TEXT);
  }

  private static boolean isKind(List<Part> parts, int index, PartKind kind) {
    return index < parts.size() && parts.get(index).kind() == kind;
  }
}
