package chainwright.app.assist;

import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Statement;
import chainwright.notation.syntax.SyntaxElement;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.syntax.SyntaxNode;
import chainwright.notation.syntax.SyntaxToken;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a caret finds in a block, in one pass over it.
 *
 * @param statement the statement that the caret touches
 * @param isInMark whether the caret stands in a comment or a note
 * @param above the first words of the statements above, each once
 * @param below the first words of the statements below, each once
 * @param previous the statement above
 */
record Scan(
    Optional<Statement> statement,
    boolean isInMark,
    List<String> above,
    List<String> below,
    Optional<Statement> previous) {

  static Scan of(Block block, int caret) {
    Optional<Statement> statement = Optional.empty();
    boolean isInMark = false;
    Set<String> above = new LinkedHashSet<>();
    Set<String> below = new LinkedHashSet<>();
    Optional<SyntaxNode> previous = Optional.empty();
    int previousAt = 0;
    int at = block.offset();
    for (SyntaxElement child : block.node().children()) {
      int end = at + child.length();
      boolean isHere = at <= caret && caret <= end;
      if (child instanceof SyntaxNode node && node.kind() == SyntaxKind.STATEMENT) {
        if (isHere) {
          statement = statement.isPresent() ? statement : Optional.of(new Statement(node, at));
        } else if (end < caret) {
          above.add(firstWord(node));
          previous = Optional.of(node);
          previousAt = at;
        } else {
          below.add(firstWord(node));
        }
      } else if (isHere && at < caret) {
        isInMark |= child.kind() == SyntaxKind.COMMENT || child.kind() == SyntaxKind.NOTE;
      }
      at = end;
    }
    int start = previousAt;
    return new Scan(
        statement,
        isInMark,
        List.copyOf(above),
        List.copyOf(below),
        previous.map(node -> new Statement(node, start)));
  }

  /** The word that a statement begins with; empty text if it begins with something else. */
  static String firstWord(SyntaxNode statement) {
    return statement.children().get(0) instanceof SyntaxToken token
            && token.kind() == SyntaxKind.WORD
        ? token.text()
        : "";
  }
}
