package chainwright.notation.format;

import chainwright.notation.syntax.SyntaxKind;

/** A token that is not blank, with its canonical spelling and what is to stand before it. */
final class Piece {

  /** The token's first offset, from the section's start. */
  final int start;

  /** The token's length in the old text. */
  final int length;

  final SyntaxKind kind;

  /** The spelling in the new text; empty for a unit that the end of its range bears. */
  final String text;

  /** How many line ends stand before it in the new text: 0, 1, or 2 for a blank line. */
  final int breaks;

  /** Whether it is the first of a line in the new text. */
  final boolean isLineStart;

  /** Whether what stands before it inside its line stays as it was written. */
  final boolean isKept;

  /** The indentation that a statement begun on the next line would get. */
  final int memberIndent;

  /** How many blanks stand before it: the indentation of a line's first, a gap otherwise. */
  private int blanks;

  Piece(
      int start,
      int length,
      SyntaxKind kind,
      String text,
      int breaks,
      boolean isLineStart,
      boolean isKept,
      int memberIndent,
      int blanks) {
    this.start = start;
    this.length = length;
    this.kind = kind;
    this.text = text;
    this.breaks = breaks;
    this.isLineStart = isLineStart;
    this.isKept = isKept;
    this.memberIndent = memberIndent;
    this.blanks = blanks;
  }

  int end() {
    return start + length;
  }

  int blanks() {
    return blanks;
  }

  void setBlanks(int count) {
    blanks = count;
  }
}
