package chainwright.notation.syntax;

import java.util.List;

/**
 * An inner node of the tree.
 *
 * @param kind what it is
 * @param children its parts, in the order of the text
 * @param length how many characters its parts cover together [UTF-16 units]
 */
public record SyntaxNode(SyntaxKind kind, List<SyntaxElement> children, int length)
    implements SyntaxElement {

  /**
   * Makes a node from its parts.
   *
   * @param kind what it is
   * @param children its parts
   * @return the node, its length the sum of theirs
   */
  public static SyntaxNode of(SyntaxKind kind, List<SyntaxElement> children) {
    int length = 0;
    for (SyntaxElement child : children) {
      length += child.length();
    }
    return new SyntaxNode(kind, List.copyOf(children), length);
  }

  @Override
  public void appendText(StringBuilder to) {
    for (SyntaxElement child : children) {
      child.appendText(to);
    }
  }

  /**
   * Returns the text that the node covers.
   *
   * @return every character of it
   */
  public String text() {
    StringBuilder builder = new StringBuilder(length);
    appendText(builder);
    return builder.toString();
  }
}
