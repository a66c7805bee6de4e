package chainwright.notation.syntax;

/** A token or a node of the tree. It knows its length but not where it stands. */
public sealed interface SyntaxElement permits SyntaxNode, SyntaxToken {

  /**
   * Returns what it is.
   *
   * @return the kind
   */
  SyntaxKind kind();

  /**
   * Returns how many characters it covers.
   *
   * @return the length [UTF-16 units]
   */
  int length();

  /**
   * Writes its text, every character of it, to the end of a builder.
   *
   * @param to the builder
   */
  void appendText(StringBuilder to);
}
