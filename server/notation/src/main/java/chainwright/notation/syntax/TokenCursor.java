package chainwright.notation.syntax;

import chainwright.notation.text.TextSpan;
import java.util.List;

/** A way through the tokens of a section, which knows where it stands. */
class TokenCursor {

  final String text;
  final List<SyntaxToken> tokens;

  /** The index of the next token. */
  int next;

  /** Where the next token begins. */
  int offset;

  /** Where the line of the next token begins. */
  int lineStart;

  TokenCursor(String text) {
    this.text = text;
    this.tokens = Lexer.lex(text);
  }

  final void take(List<SyntaxElement> into) {
    SyntaxToken token = tokens.get(next++);
    into.add(token);
    offset += token.length();
    if (token.kind() == SyntaxKind.NEWLINE) {
      lineStart = offset;
    }
  }

  final void takeAsUnit(List<SyntaxElement> into) {
    SyntaxToken token = tokens.get(next++);
    into.add(new SyntaxToken(SyntaxKind.UNIT, token.text()));
    offset += token.length();
  }

  final int indentOfLine() {
    int end = lineStart;
    while (end < text.length() && Lexer.isBlank(text.charAt(end))) {
      end++;
    }
    return end - lineStart;
  }

  final boolean isAtEnd() {
    return next >= tokens.size();
  }

  final boolean is(SyntaxKind kind) {
    return kindAhead(0) == kind;
  }

  final SyntaxKind kind() {
    return tokens.get(next).kind();
  }

  /** The kind of a token ahead; past the end it is the end of a line. */
  final SyntaxKind kindAhead(int ahead) {
    return next + ahead < tokens.size() ? tokens.get(next + ahead).kind() : SyntaxKind.NEWLINE;
  }

  final boolean hasAhead(int ahead) {
    return next + ahead < tokens.size();
  }

  final String textAhead(int ahead) {
    return tokens.get(next + ahead).text();
  }

  /** Whether nothing but blanks stands before the next token on its line. */
  final boolean isAtLineStart() {
    return text.substring(lineStart, offset).isBlank();
  }

  final TextSpan spanOfNext() {
    return TextSpan.ofLength(offset, tokens.get(next).length());
  }

  /** Where the text before the next token ends, without the blank lines and comments at its end. */
  final int endOfContent() {
    int index = next;
    int end = offset;
    while (index > 0) {
      SyntaxToken before = tokens.get(index - 1);
      if (before.kind() != SyntaxKind.NEWLINE && before.kind() != SyntaxKind.WHITESPACE) {
        break;
      }
      end -= before.length();
      index--;
    }
    return end;
  }

  final void takeUpTo(SyntaxKind mark, List<SyntaxElement> into) {
    while (!is(mark)) {
      take(into);
    }
  }
}
