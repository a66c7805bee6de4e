package chainwright.notation.syntax;

/**
 * A leaf of the tree.
 *
 * @param kind what it is
 * @param text its characters
 */
public record SyntaxToken(SyntaxKind kind, String text) implements SyntaxElement {

  @Override
  public int length() {
    return text.length();
  }

  @Override
  public void appendText(StringBuilder to) {
    to.append(text);
  }
}
