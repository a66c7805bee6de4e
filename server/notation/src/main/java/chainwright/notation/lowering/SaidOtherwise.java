package chainwright.notation.lowering;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Unread;
import chainwright.notation.syntax.Item;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Dimension;
import chainwright.quantity.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A value that is said in the trade's way: its sign as a word ({@code cut 3 dB}), or its name
 * behind it ({@code 30 % wet}).
 *
 * @param kind what the stage is
 * @param setting what the word is said for
 * @param report where troubles go
 */
record SaidOtherwise(StageKind kind, Setting setting, Report report) {

  private static final Map<String, String> SIGNS = Map.of("cut", "-", "boost", "+");

  private static final String MINUSES = "-\u2212\u2013";

  /** The setting that a word is said for, if there is one of it in the stage. */
  static Optional<SaidOtherwise> of(StageKind kind, String word, Report report) {
    List<String> said = SettingWords.of(kind, word);
    return said.size() == 1
        ? kind.setting(said.get(0))
            .filter(one -> one.takes() instanceof Takes.InUnit takes && !takes.isSpan())
            .map(one -> new SaidOtherwise(kind, one, report))
        : Optional.empty();
  }

  /** Whether a word says the sign of a gain. */
  private static boolean isSign(Item.Word word) {
    return SIGNS.containsKey(word.text().toLowerCase(Locale.ROOT));
  }

  /** Whether an amount is in the setting's unit. */
  private boolean isFor(Item.Amount amount) {
    Optional<Dimension> dimension = Readings.dimension(amount);
    return dimension.isPresent() && dimension.equals(SettingFaults.dimension(setting));
  }

  /** Whether a value in the setting's unit stands at a place. */
  boolean isBehind(List<Item> items, int behind) {
    return behind < items.size()
        && items.get(behind) instanceof Item.Amount amount
        && isFor(amount);
  }

  /**
   * Reports the word before a place with the value beside it, where both are written as one here.
   *
   * @param items what stands on the line
   * @param next the place behind the word
   * @param behind where a value behind it would stand
   * @param unnamed the values without a name; the value beside the word is taken from them
   * @param unread what could not be read; word and value are added
   * @return whether there is anything to report
   */
  boolean isReported(
      List<Item> items, int next, int behind, UnnamedValues unnamed, List<Unread> unread) {
    if (!(items.get(next - 1) instanceof Item.Word word)) {
      return false;
    }
    TextSpan span = word.span();
    if (isBehind(items, behind) && items.get(behind) instanceof Item.Amount amount) {
      if (!isSign(word)) {
        return false;
      }
      report(word, amount);
      span = span.union(amount.span());
    } else if (next >= 2
        && items.get(next - 2) instanceof Item.Amount amount
        && isFor(amount)
        && (unnamed.remove(amount) || setting.isPositional())) {
      report(word, amount);
      span = amount.span().union(span);
    } else if (isSign(word)) {
      reportSign(word);
    } else {
      return false;
    }
    unread.add(new Unread(span, List.of(setting)));
    return true;
  }

  /** Reports a word and the value beside it, and offers them in the notation's way. */
  private void report(Item.Word word, Item.Amount amount) {
    TextSpan span = word.span().union(amount.span());
    Optional<String> mended = number(word, amount.number()).flatMap(one -> mended(one, amount));
    report.add(
        Fault.UNKNOWN_SETTING,
        span,
        "`" + kind.word() + "` knows no `" + word.text() + "`",
        isSign(word) ? "A cut is a gain with a minus, a boost one with a plus." : "",
        mended.map(one -> "Write `" + one + "`.").orElse("Write `" + example(word) + "`."),
        mended
            .map(
                one -> List.of(report.change("Write `" + one + "`", true, new TextEdit(span, one))))
            .orElse(List.of()));
  }

  /** Reports a sign without a value that it could be the sign of. */
  private void reportSign(Item.Word word) {
    report.add(
        Fault.UNKNOWN_SETTING,
        word.span(),
        "`" + kind.word() + "` knows no `" + word.text() + "`",
        "A cut is a gain with a minus, a boost one with a plus.",
        "Write the gain with its sign, such as `" + example(word) + "`.");
  }

  private String example(Item.Word word) {
    String sign = SIGNS.getOrDefault(word.text().toLowerCase(Locale.ROOT), "");
    return name() + (sign.isEmpty() ? "…" : sign + "3 dB");
  }

  private String name() {
    return setting.isPositional() ? "" : setting.name() + " ";
  }

  /** The number with the sign that the word says; empty if it has the other one. */
  private static Optional<String> number(Item.Word word, String number) {
    String sign = SIGNS.getOrDefault(word.text().toLowerCase(Locale.ROOT), "");
    boolean isMinus = MINUSES.indexOf(number.charAt(0)) >= 0;
    boolean isPlus = number.charAt(0) == '+';
    if (sign.isEmpty() || (isMinus && sign.equals("-")) || (isPlus && sign.equals("+"))) {
      return Optional.of(number);
    }
    return isMinus || isPlus ? Optional.empty() : Optional.of(sign + number);
  }

  private Optional<String> mended(String number, Item.Amount amount) {
    String symbol = amount.unit().flatMap(Unit::parse).map(Unit::symbol).orElse("");
    boolean isPossible =
        AmountReader.parse(number)
            .filter(value -> Readings.isIn(setting, value, symbol))
            .isPresent();
    return isPossible ? Optional.of(name() + number + " " + symbol) : Optional.empty();
  }
}
