package chainwright.notation.syntax;

import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * A view of a block, or of a whole section: the statements and notes in it.
 *
 * @param node the node, of kind {@link SyntaxKind#BLOCK} or {@link SyntaxKind#SECTION}
 * @param offset where it begins, from the section's start
 */
public record Block(SyntaxNode node, int offset) {

  /** A member of a block. */
  public sealed interface Member {}

  /**
   * A statement.
   *
   * @param statement the statement
   */
  public record Line(Statement statement) implements Member {}

  /**
   * A note in prose.
   *
   * @param text its Markdown text, without the marks at the start of its lines
   * @param span where it stands
   */
  public record Prose(String text, TextSpan span) implements Member {}

  /**
   * Views a section as the block of its top-level statements.
   *
   * @param section the section
   * @return the view
   */
  public static Block of(Section section) {
    return new Block(section.root(), 0);
  }

  /**
   * Returns the statements and notes.
   *
   * @return them, in the order of the text
   */
  public List<Member> members() {
    List<Member> members = new ArrayList<>();
    int at = offset;
    for (SyntaxElement child : node.children()) {
      if (child instanceof SyntaxNode inner) {
        if (inner.kind() == SyntaxKind.STATEMENT) {
          members.add(new Line(new Statement(inner, at)));
        } else if (inner.kind() == SyntaxKind.NOTE) {
          members.add(new Prose(prose(inner), TextSpan.ofLength(at, inner.length())));
        }
      }
      at += child.length();
    }
    return members;
  }

  /**
   * Returns where it stands.
   *
   * @return the span, with its braces
   */
  public TextSpan span() {
    return TextSpan.ofLength(offset, node.length());
  }

  private static String prose(SyntaxNode note) {
    List<String> lines = new ArrayList<>();
    for (SyntaxElement child : note.children()) {
      if (child instanceof SyntaxToken token && token.kind() == SyntaxKind.PROSE) {
        String line = token.text().substring(1);
        lines.add((line.startsWith(" ") ? line.substring(1) : line).stripTrailing());
      }
    }
    return String.join("\n", lines);
  }
}
