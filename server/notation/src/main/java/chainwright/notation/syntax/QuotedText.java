package chainwright.notation.syntax;

/** Says where a text in quotes ends. */
final class QuotedText {

  private QuotedText() {}

  /** Whether a text in quotes has its closing quote. */
  static boolean isClosed(String string) {
    boolean endsInQuote =
        string.endsWith("\"") || (string.endsWith("\u201d") && string.charAt(0) != '"');
    return string.length() > 1 && endsInQuote && !endsEscaped(string);
  }

  /** Whether a backslash takes the meaning of the last character. */
  static boolean endsEscaped(String string) {
    int backslashes = 0;
    for (int i = string.length() - 2; i > 0 && string.charAt(i) == '\\'; i--) {
      backslashes++;
    }
    return backslashes % 2 == 1;
  }

  /**
   * Returns where a text ends that begins at an offset. Typographic quotes stand inside a text in
   * plain ones, but not the other way round. A text whose quote is forgotten ends with its line, or
   * before the brace at the end of its line, which begins a block all the same.
   */
  static int end(String text, int start) {
    boolean isPlain = text.charAt(start) == '"';
    int at = start + 1;
    while (at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
      char c = text.charAt(at++);
      if (c == '\\' && at < text.length() && text.charAt(at) >= ' ') {
        at++;
      } else if (c == '"' || (c == '\u201d' && !isPlain)) {
        return at;
      }
    }
    int brace = withoutBlanks(text, start, at) - 1;
    boolean isBrace =
        brace > start && text.charAt(brace) == '{' && Lexer.isBlank(text.charAt(brace - 1));
    return isBrace ? withoutBlanks(text, start, brace) : at;
  }

  private static int withoutBlanks(String text, int start, int end) {
    int at = end;
    while (at > start + 1 && Lexer.isBlank(text.charAt(at - 1))) {
      at--;
    }
    return at;
  }
}
