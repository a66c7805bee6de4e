package chainwright.notation.lowering;

import chainwright.notation.fault.Fault;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Unit;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * A word at whose end a number stands without a blank: {@code high-pass80}, {@code Q2}, {@code
 * kHz-2dB}.
 *
 * @param word what stands before the number
 * @param number the number, with its sign and whatever stands behind it
 */
record GluedNumber(String word, String number) {

  /**
   * Parts a word from its number.
   *
   * @param text the word and the number
   * @param isKnown tells whether a word means something
   * @return both; empty if no known word stands before a number
   */
  static Optional<GluedNumber> in(String text, Predicate<String> isKnown) {
    for (int i = 1; i < text.length(); i++) {
      boolean isSigned =
          text.charAt(i) == '-' && i + 1 < text.length() && isDigit(text.charAt(i + 1));
      if ((isSigned || isDigit(text.charAt(i))) && isKnown.test(text.substring(0, i))) {
        return Optional.of(new GluedNumber(text.substring(0, i), text.substring(i)));
      }
    }
    return Optional.empty();
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  boolean isSigned() {
    return number.charAt(0) == '-';
  }

  /**
   * Reports a unit to which the next value is glued.
   *
   * @return whether it is one
   */
  static boolean reportUnit(String unit, TextSpan span, Report report) {
    Optional<GluedNumber> found = in(unit, text -> Unit.parse(text).isPresent());
    if (found.isEmpty() || report.isFound(Fault.MISSING_BLANK, span)) {
      return found.isPresent();
    }
    GluedNumber glued = found.get();
    boolean isRange = glued.isRange();
    int parted = span.start() + glued.word.length();
    String mended =
        isRange ? glued.word + " to " + glued.number.substring(1) : glued.word + " " + glued.number;
    report.add(
        Fault.UNKNOWN_UNIT,
        span,
        "`" + unit + "` is no unit",
        isRange ? "A range is written with `to`." : "Words and values are parted by blanks.",
        "Write `" + mended + "`.",
        report.change(
            "Write `" + mended + "`",
            true,
            isRange
                ? new TextEdit(TextSpan.ofLength(parted, 1), " to ")
                : new TextEdit(new TextSpan(parted, parted), " ")));
    return true;
  }

  /**
   * Whether the number has the unit that stands before it, so that its sign was meant as a dash.
   */
  private boolean isRange() {
    int start = 1;
    while (start < number.length() && isDigit(number.charAt(start))) {
      start++;
    }
    Optional<Unit> behind = Unit.parse(number.substring(start));
    return isSigned()
        && behind.isPresent()
        && Unit.parse(word).filter(one -> one.dimension() == behind.get().dimension()).isPresent();
  }
}
