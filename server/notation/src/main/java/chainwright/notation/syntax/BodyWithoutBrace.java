package chainwright.notation.syntax;

import java.util.Map;
import java.util.Set;

/**
 * Tells which lines are the block of a statement whose opening brace is forgotten.
 *
 * <p>Nothing but its block can follow a definition, up to the next word at the top. Below that,
 * layout tells, as it does for a closing brace: the lines that are indented further than the
 * statement, and its own parts wherever they stand.
 *
 * @param head the first word of the statement
 * @param indent how far its line is indented
 * @param isTop whether it is a definition at the top of the file
 */
record BodyWithoutBrace(String head, int indent, boolean isTop) {

  /** What a block between braces is to this question: everything up to its brace belongs to it. */
  static final BodyWithoutBrace BRACED = new BodyWithoutBrace("", 0, true);

  /** A note belongs to the statement above it however far it is indented. */
  private static final String NOTE = "note";

  private static final String SIDE_CHAIN = "side-chain";
  private static final String INSERT = "insert";

  /** The structures that hold nothing but parts, and the words of these. */
  private static final Map<String, Set<String>> PARTS =
      Map.of(
          "parallel", Set.of("path"),
          "mid-side", Set.of("mid", "side"),
          "multiband", Set.of("band"));

  /** What holds stages, and the words that stand beside it and never in it. */
  private static final Map<String, Set<String>> BESIDE =
      Map.of(
          "path",
          Set.of("path"),
          "band",
          Set.of("band"),
          "mid",
          Set.of("mid", "side"),
          "side",
          Set.of("mid", "side"),
          "during",
          Set.of(),
          INSERT,
          Set.of(),
          SIDE_CHAIN,
          Set.of());

  /** Asks whether a line that can only be meant for the block follows, below notes and comments. */
  boolean isAhead(TokenCursor cursor) {
    int ahead = 0;
    int column = 0;
    while (cursor.hasAhead(ahead)
        && (cursor.kindAhead(ahead).isTrivia() || cursor.kindAhead(ahead) == SyntaxKind.PROSE)) {
      column = columnBehind(cursor, ahead, column);
      ahead++;
    }
    return cursor.kindAhead(ahead) == SyntaxKind.WORD
        && !cursor.textAhead(ahead).equals(NOTE)
        && holds(cursor.textAhead(ahead), column)
        && (!head.equals(INSERT) || isClosedAtItsIndent(cursor));
  }

  /** Asks whether what comes next, below blank lines and comments, belongs to the block. */
  boolean holdsNext(TokenCursor cursor) {
    if (isTop) {
      return true;
    }
    int ahead = 0;
    int column = cursor.offset - cursor.lineStart;
    while (cursor.hasAhead(ahead) && cursor.kindAhead(ahead).isTrivia()) {
      column = columnBehind(cursor, ahead, column);
      ahead++;
    }
    return cursor.kindAhead(ahead) != SyntaxKind.WORD
        || cursor.textAhead(ahead).equals(NOTE)
        || holds(cursor.textAhead(ahead), column);
  }

  /** Asks whether a closing brace that comes next is that of the block. */
  boolean isClosedNext(TokenCursor cursor, int enclosingIndent) {
    return cursor.is(SyntaxKind.RIGHT_BRACE)
        && (isTop
            || (cursor.isAtLineStart()
                && indent > enclosingIndent
                && cursor.offset - cursor.lineStart >= indent));
  }

  private boolean holds(String word, int column) {
    if (isTop) {
      return true;
    }
    if (column <= indent) {
      return PARTS.getOrDefault(head, Set.of()).contains(word);
    }
    boolean mayHold = PARTS.containsKey(head) || BESIDE.containsKey(head);
    return (mayHold || word.equals(SIDE_CHAIN))
        && !BESIDE.getOrDefault(head, Set.of()).contains(word);
  }

  /** An insert needs no block, so that only a brace of its own tells that it was to have one. */
  private boolean isClosedAtItsIndent(TokenCursor cursor) {
    int depth = 0;
    int column = 0;
    boolean isLineStart = false;
    for (int ahead = 0; cursor.hasAhead(ahead); ahead++) {
      SyntaxKind kind = cursor.kindAhead(ahead);
      if (isLineStart && depth == 0 && column <= indent && !kind.isTrivia()) {
        return kind == SyntaxKind.RIGHT_BRACE && column == indent;
      }
      depth +=
          kind == SyntaxKind.LEFT_BRACE ? 1 : kind == SyntaxKind.RIGHT_BRACE && depth > 0 ? -1 : 0;
      isLineStart = kind == SyntaxKind.NEWLINE || (isLineStart && kind == SyntaxKind.WHITESPACE);
      column = columnBehind(cursor, ahead, column);
    }
    return false;
  }

  private static int columnBehind(TokenCursor cursor, int ahead, int column) {
    return cursor.kindAhead(ahead) == SyntaxKind.NEWLINE
        ? 0
        : column + cursor.textAhead(ahead).length();
  }
}
