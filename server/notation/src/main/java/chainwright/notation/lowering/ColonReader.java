package chainwright.notation.lowering;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.fault.Fault;
import chainwright.notation.syntax.Item;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads what has a colon: a ratio, or a position on a clock.
 *
 * @param report where troubles go
 */
record ColonReader(Report report) {

  private static final double SECONDS_IN_MINUTE = 60;
  private static final long MINUTES_IN_HOUR = 60;

  /** Below it, a number on a clock is written with a nought before it. */
  private static final int TEN = 10;

  /**
   * Reads an amount with a colon.
   *
   * @param amount the amount as written
   * @param dimension what the place expects
   * @param name what the value is for, such as "`attack`"
   * @param setting the setting that it is for, if it is one
   * @return the number to one, or the seconds; empty if it is reported
   */
  Optional<Double> read(
      Item.Amount amount, Dimension dimension, String name, Optional<Setting> setting) {
    if (dimension != Dimension.RATIO && dimension != Dimension.TIME) {
      report.add(
          Fault.WRONG_UNIT,
          amount.span(),
          name + " takes " + dimension.description() + ", not `" + amount.number() + "`",
          "",
          "A colon stands in a ratio (`3:1`) or in a position (`0:31.2`).");
      return Optional.empty();
    }
    if (amount.unit().isPresent()) {
      report.add(
          Fault.WRONG_UNIT,
          amount.unitSpan(),
          "a " + (dimension == Dimension.RATIO ? "ratio" : "position") + " has no unit",
          "",
          "Remove `" + amount.unit().get() + "`.",
          report.change(
              "Remove `" + amount.unit().get() + "`",
              true,
              new TextEdit(new TextSpan(amount.numberSpan().end(), amount.unitSpan().end()), "")));
      return Optional.empty();
    }
    List<Double> parts = new ArrayList<>();
    for (String part : amount.number().split(":", -1)) {
      AmountReader.parse(part).ifPresent(parts::add);
    }
    return dimension == Dimension.RATIO ? ratio(amount, parts, setting) : seconds(amount, parts);
  }

  private Optional<Double> ratio(
      Item.Amount amount, List<Double> parts, Optional<Setting> setting) {
    if (parts.size() == 2 && parts.get(1) == 1) {
      return Optional.of(parts.get(0));
    }
    Optional<String> mended = toOne(parts, setting);
    report.add(
        Fault.MALFORMED_RATIO,
        amount.numberSpan(),
        "the ratio `" + amount.number() + "` does not end in `:1`",
        "Ratios are compared at a glance when all of them are to one.",
        mended.isPresent() ? "Write `" + mended.get() + "`." : "Write a ratio such as `3:1`.",
        mended.stream()
            .map(
                one ->
                    report.change(
                        "Write `" + one + "`", true, new TextEdit(amount.numberSpan(), one)))
            .toList());
    return Optional.empty();
  }

  /**
   * A ratio to one that the setting can mean: the quotient, else that of the sides in the other
   * order, as some write them.
   */
  private static Optional<String> toOne(List<Double> parts, Optional<Setting> setting) {
    if (parts.size() != 2 || parts.get(0) <= 0 || parts.get(1) <= 0) {
      return Optional.empty();
    }
    for (double toOne : new double[] {parts.get(0) / parts.get(1), parts.get(1) / parts.get(0)}) {
      if (setting.isEmpty() || Readings.isPossible(setting.get(), Dimension.RATIO, toOne)) {
        return Optional.of(AmountReader.spell(toOne) + ":1");
      }
    }
    return Optional.empty();
  }

  private Optional<Double> seconds(Item.Amount amount, List<Double> parts) {
    double total = 0;
    boolean isCarried = false;
    for (int i = 0; i < parts.size(); i++) {
      total = total * SECONDS_IN_MINUTE + parts.get(i);
      isCarried |= i > 0 && parts.get(i) >= SECONDS_IN_MINUTE;
    }
    if (!isCarried) {
      return Optional.of(total);
    }
    String mended = clock(total);
    report.add(
        Fault.MALFORMED_TIME,
        amount.numberSpan(),
        "the position `" + amount.number() + "` counts past 59",
        "A minute has sixty seconds, an hour sixty minutes.",
        "Write `" + mended + "`.",
        report.change("Write `" + mended + "`", true, new TextEdit(amount.numberSpan(), mended)));
    return Optional.empty();
  }

  private static String clock(double totalSeconds) {
    long minutes = (long) (totalSeconds / SECONDS_IN_MINUTE);
    double rest = totalSeconds - minutes * SECONDS_IN_MINUTE;
    String seconds = (rest < TEN ? "0" : "") + AmountReader.spell(rest);
    long hours = minutes / MINUTES_IN_HOUR;
    long left = minutes % MINUTES_IN_HOUR;
    return hours == 0
        ? left + ":" + seconds
        : hours + (left < TEN ? ":0" : ":") + left + ":" + seconds;
  }
}
