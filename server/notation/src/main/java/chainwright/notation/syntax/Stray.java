package chainwright.notation.syntax;

import chainwright.notation.fault.Fault;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;

/** Words what is wrong with characters that mean nothing where they stand. */
final class Stray {

  private static final String TO = "A range is written with `to`: `5.5 to 9 kHz`.";

  private Stray() {}

  /**
   * Returns the trouble with an unknown token.
   *
   * @param tokens all tokens
   * @param index which of them is unknown
   * @param offset where it begins
   * @param indent the indentation of its line
   * @param isAfterNumber whether it follows a number without a unit
   */
  static Section.Trouble of(
      List<SyntaxToken> tokens, int index, int offset, int indent, boolean isAfterNumber) {
    String text = tokens.get(index).text();
    TextSpan span = TextSpan.ofLength(offset, text.length());
    if (text.startsWith("//")) {
      TextSpan mark = TextSpan.ofLength(offset, 2);
      return new Section.Trouble(
          Fault.SLASH_COMMENT,
          mark,
          "`//` begins no comment here",
          "A comment begins with `#`.",
          List.of(new TextEdit(mark, "#")),
          false);
    }
    if (text.equals("...") || text.equals("\u2026")) {
      return trouble(
          span,
          "`" + text + "` continues a statement at the start of a line only",
          "Break the line before it.",
          new TextEdit(span, "\n" + " ".repeat(indent + 2) + "..."));
    }
    if (text.equals("..")) {
      return unread(span, "`..` joins no numbers", TO, new TextEdit(span, " to "));
    }
    if (isSignApart(tokens, index)) {
      TextSpan gap = TextSpan.ofLength(span.end(), tokens.get(index + 1).length());
      return isAfterNumber
          ? unread(span, "`" + text + "` joins no numbers", TO, new TextEdit(span, "to"))
          : unread(
              span,
              "a sign touches its number",
              "Remove the blank between them.",
              new TextEdit(gap, ""));
    }
    return trouble(span, "`" + text + "` means nothing here", remedy(text), new TextEdit(span, ""));
  }

  /** Returns the trouble with a number that follows another number or a word without a blank. */
  static Section.Trouble glued(SyntaxToken before, SyntaxToken number, int offset) {
    String text = number.text();
    boolean isAfterNumber = before.kind() != SyntaxKind.WORD;
    TextSpan first = TextSpan.ofLength(offset, 1);
    if (isAfterNumber && text.startsWith(".")) {
      return unread(
          first,
          "`" + before.text() + text + "` has two decimal points",
          "A number has one decimal point, and none between thousands.",
          new TextEdit(first, ""));
    }
    if (isAfterNumber && !text.startsWith("+") && text.length() > 1) {
      return new Section.Trouble(
          Fault.RANGE_WITH_DASH,
          new TextSpan(offset - before.length(), offset + text.length()),
          "`" + before.text() + text + "` is two numbers, the second with a minus",
          TO,
          List.of(new TextEdit(first, " to ")),
          true);
    }
    int digits = isAfterNumber || !text.startsWith(".") ? 0 : digitsAtEnd(before.text());
    TextSpan place = new TextSpan(offset - digits, offset - digits);
    return new Section.Trouble(
        Fault.MISSING_BLANK,
        new TextSpan(offset - before.length(), offset + text.length()),
        "a blank is missing in `" + before.text() + text + "`",
        "Words and values are parted by blanks.",
        List.of(new TextEdit(place, " ")),
        true);
  }

  private static int digitsAtEnd(String word) {
    int start = word.length();
    while (Character.isDigit(word.charAt(start - 1)) && start > 1) {
      start--;
    }
    boolean isSigned = start > 1 && start < word.length() && word.charAt(start - 1) == '-';
    return word.length() - start + (isSigned ? 1 : 0);
  }

  private static Section.Trouble trouble(TextSpan span, String what, String remedy, TextEdit mend) {
    return new Section.Trouble(Fault.STRAY_CHARACTER, span, what, remedy, List.of(mend), false);
  }

  private static Section.Trouble unread(TextSpan span, String what, String remedy, TextEdit mend) {
    return new Section.Trouble(Fault.STRAY_CHARACTER, span, what, remedy, List.of(mend), true);
  }

  private static boolean isSignApart(List<SyntaxToken> tokens, int index) {
    String text = tokens.get(index).text();
    return (text.equals("-") || text.equals("+") || text.equals("\u2212") || text.equals("\u2013"))
        && index + 2 < tokens.size()
        && tokens.get(index + 1).kind() == SyntaxKind.WHITESPACE
        && tokens.get(index + 2).kind() == SyntaxKind.NUMBER
        && Character.isDigit(tokens.get(index + 2).text().charAt(0));
  }

  private static String remedy(String text) {
    return switch (text) {
      case ";" -> "Remove it; a statement ends at the end of its line, a comment begins with `#`.";
      case "," -> "Remove it; settings are parted by blanks alone.";
      case ":" -> "Remove it; a name and its value are parted by a blank alone.";
      case "(", ")", "[", "]" -> "Remove it; a side remark is a comment, which begins with `#`.";
      case "'" -> "Write `\"`; a text stands in double quotes.";
      case ">" -> "Begin a line of its own with it, if a note in prose is meant.";
      default -> "Remove it; words and values are parted by blanks alone.";
    };
  }
}
