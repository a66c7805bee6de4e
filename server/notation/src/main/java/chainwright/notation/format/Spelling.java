package chainwright.notation.format;

import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.syntax.SyntaxNode;
import chainwright.notation.syntax.SyntaxToken;
import chainwright.quantity.Dimension;
import chainwright.quantity.Unit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * The one canonical spelling of a token: {@code 3.1k} and {@code 3100Hz} become {@code 3.1 kHz}, a
 * typographic minus becomes a hyphen. A sign that was written stays, one that was not is not added.
 */
final class Spelling {

  private Spelling() {}

  /**
   * A number and its unit as they are to be written.
   *
   * @param number the number
   * @param unit the unit; empty where none is written
   * @param isGlued whether number and unit stand together, because the unit is none that is known
   */
  record Amount(String number, String unit, boolean isGlued) {}

  /** Returns the spelling of a quantity. */
  static Amount amount(SyntaxNode quantity) {
    SyntaxToken number = number(quantity);
    Optional<SyntaxToken> written = unit(quantity);
    if (written.isEmpty()) {
      return new Amount(numeral(number.text()), "", false);
    }
    Optional<Unit> unit = Unit.parse(written.get().text());
    return unit.isPresent()
        ? scaled(number, unit.get())
        : new Amount(numeral(number.text()), written.get().text(), true);
  }

  /**
   * Returns the spellings of the two ends of a range. A unit that holds for both is written once,
   * at the end.
   */
  static List<Amount> range(SyntaxNode low, SyntaxNode high) {
    Amount lowAmount = amount(low);
    Amount highAmount = amount(high);
    Optional<Unit> highUnit = unit(high).flatMap(token -> Unit.parse(token.text()));
    boolean isShareable =
        number(low).kind() == SyntaxKind.NUMBER
            && number(high).kind() == SyntaxKind.NUMBER
            && highUnit.isPresent()
            && !lowAmount.isGlued();
    if (isShareable) {
      if (unit(low).isEmpty()) {
        lowAmount = scaled(number(low), highUnit.get());
      }
      if (lowAmount.unit().equals(highAmount.unit())) {
        lowAmount = new Amount(lowAmount.number(), "", false);
      } else if (unit(low).isEmpty()) {
        // There is no token to hold the unit that the low end now needs.
        lowAmount = new Amount(lowAmount.number() + " " + lowAmount.unit(), "", false);
      }
    }
    return List.of(lowAmount, highAmount);
  }

  private static Amount scaled(SyntaxToken number, Unit unit) {
    String numeral = numeral(number.text());
    if (unit.dimension() == Dimension.FREQUENCY
        && number.kind() == SyntaxKind.NUMBER
        && numeral.indexOf(',') < 0) {
      if (unit == Unit.HERTZ && wholeDigits(numeral) > 3) {
        return new Amount(moved(numeral, -3), Unit.KILOHERTZ.symbol(), false);
      }
      if (unit == Unit.KILOHERTZ && isBelowOne(numeral)) {
        return new Amount(moved(numeral, 3), Unit.HERTZ.symbol(), false);
      }
    }
    return new Amount(numeral, unit.symbol(), false);
  }

  private static int wholeDigits(String numeral) {
    int point = numeral.indexOf('.');
    int start = Character.isDigit(numeral.charAt(0)) ? 0 : 1;
    return (point < 0 ? numeral.length() : point) - start;
  }

  /** A numeral has no surplus zeros, so that only one below 1 begins with 0. */
  private static boolean isBelowOne(String numeral) {
    return numeral.charAt(Character.isDigit(numeral.charAt(0)) ? 0 : 1) == '0';
  }

  private static String moved(String numeral, int places) {
    String sign = numeral.startsWith("+") ? "+" : "";
    return sign + numeral(new BigDecimal(numeral).movePointRight(places).toPlainString());
  }

  /** Returns a number without surplus zeros and with a plain sign, such as {@code -0.5}. */
  static String numeral(String written) {
    int start = 0;
    String sign = "";
    char first = written.charAt(0);
    if (first == '+') {
      sign = "+";
      start = 1;
    } else if (first == '-' || first == '\u2212' || first == '\u2013') {
      sign = "-";
      start = 1;
    }
    if (written.indexOf(':') >= 0 || written.indexOf('/') >= 0 || written.indexOf(',') >= 0) {
      return sign + written.substring(start);
    }
    int point = written.indexOf('.');
    int wholeEnd = point < 0 ? written.length() : point;
    while (start < wholeEnd - 1 && written.charAt(start) == '0') {
      start++;
    }
    int end = written.length();
    if (point >= 0) {
      while (end > point + 1 && written.charAt(end - 1) == '0') {
        end--;
      }
      if (end == point + 1) {
        end = point;
      }
    }
    String digits = written.substring(start, Math.max(start, end));
    return sign + (digits.isEmpty() || digits.startsWith(".") ? "0" + digits : digits);
  }

  /** Returns the spelling of a token that is not part of a quantity. */
  static String token(SyntaxToken token) {
    String text = token.text();
    return switch (token.kind()) {
      case STRING -> string(text);
      case PROSE -> prose(text);
      case COMMENT -> text.stripTrailing();
      case CONTINUATION -> "...";
      case WORD,
          NUMBER,
          COLON_NUMBER,
          FRACTION,
          UNIT,
          EQUALS,
          LEFT_BRACE,
          RIGHT_BRACE,
          WHITESPACE,
          NEWLINE,
          UNKNOWN,
          SECTION,
          STATEMENT,
          QUANTITY,
          RANGE,
          BLOCK,
          NOTE ->
          text;
    };
  }

  private static String string(String text) {
    int last = text.length() - 1;
    if (last == 0 || (text.charAt(0) == '"' && text.charAt(last) == '"')) {
      return text;
    }
    return "\"" + text.substring(1, last) + "\"";
  }

  private static String prose(String text) {
    String line = text.substring(1).stripTrailing();
    return line.isEmpty() || line.startsWith(" ") ? ">" + line : "> " + line;
  }

  /** Returns what kind of value a quantity is: values of one shape may share a column. */
  static String shape(SyntaxNode quantity) {
    Optional<SyntaxToken> written = unit(quantity);
    Optional<Unit> unit = written.isPresent() ? Unit.parse(written.get().text()) : Optional.empty();
    return unit.isPresent() ? unit.get().dimension().name() : number(quantity).kind().name();
  }

  private static SyntaxToken number(SyntaxNode quantity) {
    return (SyntaxToken) quantity.children().get(0);
  }

  private static Optional<SyntaxToken> unit(SyntaxNode quantity) {
    int last = quantity.children().size() - 1;
    return last == 0 ? Optional.empty() : Optional.of((SyntaxToken) quantity.children().get(last));
  }
}
