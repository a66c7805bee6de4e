package chainwright.notation.lowering;

import chainwright.notation.fault.Fault;
import chainwright.notation.syntax.Item;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A place between the loudspeakers that is said with a side, as on a paper of settings, where the
 * notation wants a signed share: {@code L30}, {@code 30 L}, {@code left}.
 *
 * @param span where it stands
 * @param size how many items it is made of
 * @param meant such as {@code -30 %}
 */
record PanPosition(TextSpan span, int size, String meant) {

  static final String SETTING = "position";

  private static final Pattern SAID =
      Pattern.compile("(?i)(l|left|r|right|c|centre|center)(\\d{1,3})?");
  private static final int WHOLE = 100;

  /** Finds one among the items of a line, from an index on. */
  static Optional<PanPosition> at(List<Item> items, int index) {
    Item first = items.get(index);
    Optional<Item> second =
        index + 1 < items.size() ? Optional.of(items.get(index + 1)) : Optional.empty();
    if (first instanceof Item.Word word) {
      Optional<String> number = second.flatMap(PanPosition::share);
      Matcher said = SAID.matcher(word.text());
      boolean isPair = number.isPresent() && said.matches() && said.group(2) == null;
      return isPair
          ? of(word.text(), number, first.span().union(second.orElseThrow().span()), 2)
          : of(word.text(), Optional.empty(), first.span(), 1);
    }
    if (!(first instanceof Item.Amount amount)) {
      return Optional.empty();
    }
    Optional<String> side = amount.unit().filter(unit -> SAID.matcher(unit).matches());
    if (side.isPresent()) {
      return of(side.get(), Optional.of(amount.number()), first.span(), 1);
    }
    Optional<String> number = share(first);
    return second.isPresent() && second.get() instanceof Item.Word word && number.isPresent()
        ? of(word.text(), number, first.span().union(word.span()), 2)
        : Optional.empty();
  }

  /** Reports it. */
  void report(Report report) {
    report.add(
        Fault.UNKNOWN_WORD,
        span,
        "`" + SETTING + "` is not said as `" + report.text(span) + "`",
        "It is a share with a sign: −100 % is left, 0 % the centre, +100 % right.",
        "Write `" + meant + "`.",
        report.change("Write `" + meant + "`", true, new TextEdit(span, meant)));
  }

  private static Optional<String> share(Item item) {
    return item instanceof Item.Amount amount
            && amount.unit().map(unit -> unit.equals("%")).orElse(true)
            && amount.number().matches("\\d{1,3}")
        ? Optional.of(amount.number())
        : Optional.empty();
  }

  private static Optional<PanPosition> of(
      String side, Optional<String> number, TextSpan span, int size) {
    Matcher said = SAID.matcher(side);
    if (!said.matches()) {
      return Optional.empty();
    }
    Optional<String> behind = Optional.ofNullable(said.group(2));
    boolean isCentre = said.group(1).toLowerCase(Locale.ROOT).startsWith("c");
    Optional<Double> share = number.or(() -> behind).flatMap(AmountReader::parse);
    double percent = share.orElse((double) (isCentre ? 0 : WHOLE));
    if (percent > WHOLE || (isCentre && percent > 0)) {
      return Optional.empty();
    }
    boolean isLeft = said.group(1).toLowerCase(Locale.ROOT).startsWith("l");
    String sign = percent == 0 ? "" : isLeft ? "-" : "+";
    return Optional.of(new PanPosition(span, size, sign + AmountReader.spell(percent) + " %"));
  }
}
