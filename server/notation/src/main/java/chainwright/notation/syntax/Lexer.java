package chainwright.notation.syntax;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts a text into tokens that together are the text. It never fails: what it does not know becomes
 * a token of kind {@link SyntaxKind#UNKNOWN}.
 *
 * <p>No token spans lines, so each line can be read without the lines above it.
 */
final class Lexer {

  private static final char BYTE_ORDER_MARK = '\ufeff';

  /** Of tokens, blanks among them. */
  private static final int USUAL_LENGTH = 3;

  private static final String[] INDENTS = indents();

  private final String text;
  private final List<SyntaxToken> tokens;
  private int at;
  private boolean isLineStart = true;

  private Lexer(String text) {
    this.text = text;
    this.tokens = new ArrayList<>(text.length() / USUAL_LENGTH + 1);
  }

  /** Returns the tokens of a text; their texts in a row are the text. */
  static List<SyntaxToken> lex(String text) {
    Lexer lexer = new Lexer(text);
    while (lexer.at < text.length()) {
      lexer.next();
    }
    return lexer.tokens;
  }

  private void next() {
    char c = text.charAt(at);
    if (c == '\n' || c == '\r') {
      boolean isPair = c == '\r' && peek(1) == '\n';
      take(SyntaxKind.NEWLINE, isPair ? 2 : 1);
      isLineStart = true;
    } else if (isBlank(c)) {
      take(SyntaxKind.WHITESPACE, blanks());
    } else if (isLineStart && c == '>') {
      takeToLineEnd(SyntaxKind.PROSE);
    } else if (isLineStart && c == '\u2026') {
      take(SyntaxKind.CONTINUATION, 1);
    } else if (isLineStart && text.startsWith("...", at)) {
      take(SyntaxKind.CONTINUATION, 3);
    } else if (c == '#') {
      takeToLineEnd(SyntaxKind.COMMENT);
    } else if (c == '/' && peek(1) == '/') {
      takeToLineEnd(SyntaxKind.UNKNOWN);
    } else if (c == '"' || c == '\u201c' || c == '\u201d') {
      take(SyntaxKind.STRING, QuotedText.end(text, at) - at);
    } else if (c == '{') {
      take(SyntaxKind.LEFT_BRACE, 1);
    } else if (c == '}') {
      take(SyntaxKind.RIGHT_BRACE, 1);
    } else if (c == '=') {
      take(SyntaxKind.EQUALS, 1);
    } else if (c == '%' || c == '\u00b0') {
      take(SyntaxKind.UNIT, 1);
    } else if (isNumberStart()) {
      takeNumber();
    } else if (Character.isLetter(c)) {
      take(SyntaxKind.WORD, wordLength());
    } else {
      take(SyntaxKind.UNKNOWN, unknownLength());
    }
  }

  private void take(SyntaxKind kind, int length) {
    tokens.add(new SyntaxToken(kind, textOf(kind, length)));
    at += length;
    isLineStart = isLineStart && kind == SyntaxKind.WHITESPACE;
  }

  /** Most tokens are a blank, an indentation or a line's end, whose text need not be copied. */
  private String textOf(SyntaxKind kind, int length) {
    if (kind == SyntaxKind.NEWLINE && length == 1 && text.charAt(at) == '\n') {
      return "\n";
    }
    if (kind == SyntaxKind.WHITESPACE
        && length < INDENTS.length
        && text.startsWith(INDENTS[length], at)) {
      return INDENTS[length];
    }
    return text.substring(at, at + length);
  }

  private static String[] indents() {
    String[] indents = new String[17];
    for (int i = 0; i < indents.length; i++) {
      indents[i] = " ".repeat(i);
    }
    return indents;
  }

  private void takeToLineEnd(SyntaxKind kind) {
    int end = at;
    while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
      end++;
    }
    take(kind, end - at);
  }

  private boolean isNumberStart() {
    int ahead = isSign(text.charAt(at)) ? 1 : 0;
    return isDigit(peek(ahead)) || (peek(ahead) == '.' && isDigit(peek(ahead + 1)));
  }

  private void takeNumber() {
    int end = at + (isSign(text.charAt(at)) ? 1 : 0);
    end = digits(end);
    SyntaxKind kind = SyntaxKind.NUMBER;
    if (isAt(end, '/') && isDigit(charAt(end + 1))) {
      kind = SyntaxKind.FRACTION;
      end = digits(end + 1);
    } else {
      while (isAt(end, ':') && isDigit(charAt(end + 1))) {
        kind = SyntaxKind.COLON_NUMBER;
        end = digits(end + 1);
      }
      if (isAt(end, '.') && !isAt(end + 1, '.')) {
        end = digits(end + 1);
      } else if (isAt(end, ',') && isDigit(charAt(end + 1))) {
        end = digits(end + 1);
      }
      while (kind == SyntaxKind.NUMBER && isAt(end, ':') && isDigit(charAt(end + 1))) {
        kind = SyntaxKind.COLON_NUMBER;
        end = digits(end + 1);
        if (isAt(end, '.')) {
          end = digits(end + 1);
        }
      }
    }
    take(kind, end - at);
  }

  private int wordLength() {
    int end = at + 1;
    while (end < text.length()) {
      char c = text.charAt(end);
      boolean isSlashInside = c == '/' && Character.isLetter(charAt(end + 1));
      if (!Character.isLetterOrDigit(c) && c != '-' && c != '_' && !isSlashInside) {
        break;
      }
      end++;
    }
    return end - at;
  }

  private int unknownLength() {
    if (text.startsWith("...", at)) {
      return 3;
    }
    if (text.startsWith("..", at)) {
      return 2;
    }
    return Character.charCount(text.codePointAt(at));
  }

  private int digits(int from) {
    int end = from;
    while (isDigit(charAt(end))) {
      end++;
    }
    return end;
  }

  private int blanks() {
    int end = at;
    while (end < text.length() && isBlank(text.charAt(end))) {
      end++;
    }
    return end - at;
  }

  private char peek(int ahead) {
    return charAt(at + ahead);
  }

  private char charAt(int index) {
    return index < text.length() ? text.charAt(index) : '\0';
  }

  private boolean isAt(int index, char c) {
    return charAt(index) == c;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /**
   * The hyphen, the minus sign of Unicode and the en dash that word processors put in its place.
   */
  private static boolean isSign(char c) {
    return c == '+' || c == '-' || c == '\u2212' || c == '\u2013';
  }

  /** Blanks of every width that pasted text brings along, and the byte order mark. */
  static boolean isBlank(char c) {
    return c == ' '
        || c == '\t'
        || c == BYTE_ORDER_MARK
        || c == '\f'
        || c == '\u000b'
        || (c > '\u007f' && Character.getType(c) == Character.SPACE_SEPARATOR)
        || c == '\u200b';
  }
}
