package chainwright.notation.syntax;

/**
 * A tree in a form for reading: a line for each statement, note, comment and brace, indented by its
 * depth, quantities in parentheses and ranges in square brackets. Blanks are left out.
 *
 * <pre>
 * statement bell (3.1 kHz) (-2 dB) Q (2)
 *   comment "# hurts"
 * </pre>
 */
final class TreeDump {

  private final StringBuilder out = new StringBuilder();

  private TreeDump() {}

  static String of(SyntaxTree tree) {
    TreeDump dump = new TreeDump();
    for (Section section : tree.sections()) {
      dump.out.append("section\n");
      dump.members(section.root(), 1);
    }
    return dump.out.toString();
  }

  private void members(SyntaxNode parent, int depth) {
    for (SyntaxElement child : parent.children()) {
      if (child instanceof SyntaxToken token) {
        if (token.kind() != SyntaxKind.WHITESPACE && token.kind() != SyntaxKind.NEWLINE) {
          line(depth, name(token) + " " + quoted(token));
        }
      } else if (child instanceof SyntaxNode node && node.kind() == SyntaxKind.NOTE) {
        line(depth, "note");
        members(node, depth + 1);
      } else if (child instanceof SyntaxNode node) {
        statement(node, depth);
      }
    }
  }

  private void statement(SyntaxNode statement, int depth) {
    StringBuilder text = new StringBuilder("statement");
    for (SyntaxElement child : statement.children()) {
      if (child instanceof SyntaxNode node && node.kind() == SyntaxKind.BLOCK) {
        line(depth, text.toString());
        text.setLength(0);
        line(depth + 1, "block");
        members(node, depth + 2);
      } else if (child.kind() == SyntaxKind.COMMENT) {
        text.append(" comment ").append(quoted((SyntaxToken) child));
      } else {
        item(child, text);
      }
    }
    if (!text.isEmpty()) {
      line(depth, text.toString());
    }
  }

  private static void item(SyntaxElement element, StringBuilder to) {
    if (element instanceof SyntaxNode node) {
      boolean isRange = node.kind() == SyntaxKind.RANGE;
      StringBuilder inside = new StringBuilder();
      node.children().forEach(child -> item(child, inside));
      to.append(isRange ? " [" : " (").append(inside.substring(1)).append(isRange ? ']' : ')');
    } else if (element instanceof SyntaxToken token
        && token.kind() != SyntaxKind.WHITESPACE
        && token.kind() != SyntaxKind.NEWLINE) {
      to.append(' ').append(token.text());
    }
  }

  private void line(int depth, String text) {
    out.append("  ".repeat(depth)).append(text).append('\n');
  }

  private static String name(SyntaxToken token) {
    return token.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  private static String quoted(SyntaxToken token) {
    return '"' + token.text() + '"';
  }
}
