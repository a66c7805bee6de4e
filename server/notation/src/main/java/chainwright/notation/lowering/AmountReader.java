package chainwright.notation.lowering;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.fault.Fault;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Dimension;
import chainwright.quantity.NumberText;
import chainwright.quantity.Quantity;
import chainwright.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;

/**
 * Turns a number with its unit into a quantity, or says why it cannot be one.
 *
 * @param report where troubles go
 */
record AmountReader(Report report) {

  /** The alignment level of the example [dB below full scale]. Source: EBU R 68. */
  private static final double EXAMPLE_BELOW_FULL_SCALE = 18;

  /** What makes a message about an amount readable: which setting it is for. */
  private static final String BARE = "A number without a unit could mean anything.";

  /**
   * Reads an amount for a place that expects one dimension.
   *
   * @param amount the amount as written
   * @param expected the unit in which the place is usually written
   * @param name what the value is for, such as "`attack`"
   */
  Optional<Quantity> read(Item.Amount amount, Unit expected, String name) {
    return read(amount, new Wanted(expected, name, Optional.empty()), Optional.empty());
  }

  /**
   * Reads an amount for a place that can mean some values only.
   *
   * @param amount the amount as written
   * @param expected the unit in which the place is usually written
   * @param name what the value is for
   * @param isPossible whether the place can mean a value [base unit]; a number without a unit is
   *     offered in units in which it is one
   */
  Optional<Quantity> read(
      Item.Amount amount, Unit expected, String name, DoublePredicate isPossible) {
    return read(
        amount,
        new Wanted(expected, name, Optional.empty(), Optional.of(isPossible)),
        Optional.empty());
  }

  /** Reads an amount that a setting takes in a unit. */
  Optional<Quantity> read(Item.Amount amount, Setting setting, Unit unit) {
    return read(
        amount,
        new Wanted(unit, "`" + setting.name() + "`", Optional.of(setting)),
        Optional.empty());
  }

  /** What a place expects: a unit's dimension, for what, and of which setting if it is one. */
  private record Wanted(
      Unit unit, String name, Optional<Setting> setting, Optional<DoublePredicate> isPossible) {

    Wanted(Unit unit, String name, Optional<Setting> setting) {
      this(unit, name, setting, Optional.empty());
    }

    /** How a number could be written here; nowhere but in a setting is anything known of limits. */
    List<String> readings(Item.Amount amount) {
      if (setting.isPresent()) {
        return Readings.of(setting.get(), amount);
      }
      if (isPossible.isPresent() && amount.unit().isEmpty()) {
        return Readings.withUnit(unit.dimension(), amount.number(), isPossible.get());
      }
      boolean isLevelMixUp =
          amount.unit().flatMap(Unit::parse).filter(Unit.DECIBEL::equals).isPresent()
              && (unit == Unit.DBFS || unit == Unit.DBU || unit == Unit.DBTP);
      return amount.unit().isEmpty() || isLevelMixUp
          ? List.of(amount.number() + " " + unit.symbol())
          : List.of();
    }
  }

  /** Reads both ends of a range; a unit at the end alone holds for both. */
  Optional<Quantity[]> read(Item.Range range, Unit expected, String name) {
    Wanted wanted = new Wanted(expected, name, Optional.empty());
    Optional<Quantity> low = read(range.low(), wanted, range.high().unit());
    Optional<Quantity> high = read(range.high(), wanted, Optional.empty());
    if (low.isEmpty() || high.isEmpty()) {
      return Optional.empty();
    }
    if (low.get().baseValue() == high.get().baseValue()) {
      report.add(
          Fault.RANGE_UPSIDE_DOWN,
          range.span(),
          name + " begins and ends at " + low.get(),
          "A range of one point holds nothing.",
          "Write two different ends, the lower one first.");
      return Optional.empty();
    }
    if (low.get().baseValue() > high.get().baseValue()) {
      report.add(
          Fault.RANGE_UPSIDE_DOWN,
          range.span(),
          name + " runs from " + low.get() + " down to " + high.get(),
          "",
          "Write the lower end first.",
          report.fix(
              "Write the lower end first", true, new TextEdit(range.span(), swapped(range))));
      return Optional.of(new Quantity[] {high.get(), low.get()});
    }
    return Optional.of(new Quantity[] {low.get(), high.get()});
  }

  /** The ends of a range in the other order; a unit that stood at its end alone stays there. */
  private String swapped(Item.Range range) {
    boolean isShared = range.low().unit().isEmpty() && range.high().unit().isPresent();
    return isShared
        ? range.high().number()
            + " to "
            + range.low().number()
            + " "
            + report.text(range.high().unitSpan())
        : report.text(range.high().span()) + " to " + report.text(range.low().span());
  }

  /** Reads a number that has no unit by nature: Q, a count. */
  Optional<Quantity> readBare(Item.Amount amount, Dimension dimension, Setting setting) {
    if (amount.unit().isPresent()) {
      String unit = amount.unit().get();
      TextSpan behind = new TextSpan(amount.numberSpan().end(), amount.unitSpan().end());
      boolean isWidth = Unit.parse(unit).filter(Unit.OCTAVE::equals).isPresent();
      boolean isPossible =
          !isWidth // A width in octaves is another number than its Q.
              && parse(amount.number())
                  .filter(value -> Readings.isPossible(setting, dimension, value))
                  .isPresent();
      report.add(
          Fault.WRONG_UNIT,
          amount.span(),
          "`" + setting.name() + "` is a plain number, without the unit `" + unit + "`",
          "",
          isPossible ? "Remove the unit." : "Write " + Readings.limits(setting) + ".",
          isPossible
              ? List.of(report.change("Remove `" + unit + "`", true, new TextEdit(behind, "")))
              : List.of());
      return Optional.empty();
    }
    Optional<Double> value = number(amount);
    return value.isPresent()
        ? make(amount, dimension, value.get(), Optional.of(setting))
        : Optional.empty();
  }

  private Optional<Quantity> read(Item.Amount amount, Wanted wanted, Optional<String> inherited) {
    String name = wanted.name;
    Dimension dimension = wanted.unit.dimension();
    if (amount.kind() == SyntaxKind.COLON_NUMBER) {
      Optional<Double> value =
          new ColonReader(report).read(amount, dimension, name, wanted.setting);
      return value.isPresent() ? make(amount, wanted, value.get()) : Optional.empty();
    }
    Optional<String> written = amount.unit().isPresent() ? amount.unit() : inherited;
    if (written.isEmpty()) {
      reportBare(amount, wanted);
      return Optional.empty();
    }
    Optional<Unit> unit = Unit.parse(written.get());
    if (unit.isEmpty() && GluedNumber.reportUnit(written.get(), amount.unitSpan(), report)) {
      return Optional.empty();
    }
    if (unit.isEmpty()) {
      List<Dimension> dimensions = List.of(dimension);
      report.unknownWord(
          Fault.UNKNOWN_UNIT,
          "`" + written.get() + "` is no unit; " + name + " takes " + dimension.description(),
          amount.unitSpan(),
          UnitWords.near(written.get(), dimensions).stream()
              .filter(one -> wanted.setting.map(of -> Readings.isIn(of, amount, one)).orElse(true))
              .toList(),
          Report.knownHere(UnitWords.symbols(dimensions)));
      return Optional.empty();
    }
    if (unit.get().dimension() != dimension) {
      reportWrongUnit(amount, unit.get(), wanted);
      return Optional.empty();
    }
    Optional<Double> value = number(amount);
    return value.isPresent()
        ? make(amount, wanted, unit.get().toBase(value.get()))
        : Optional.empty();
  }

  private void reportBare(Item.Amount amount, Wanted wanted) {
    Dimension dimension = wanted.unit.dimension();
    List<String> readings = wanted.readings(amount);
    boolean isRatio = wanted.unit == Unit.TO_ONE;
    report.add(
        Fault.MISSING_UNIT,
        amount.span(),
        isRatio
            ? wanted.name + " is written as " + dimension.description()
            : "the number "
                + amount.number()
                + " has no unit; "
                + wanted.name
                + " takes "
                + dimension.description(),
        BARE,
        readings.isEmpty()
            ? "Write its unit; no value of " + wanted.name + " is this number alone."
            : "Write " + written(readings) + ".",
        readings.stream()
            .map(
                one ->
                    report.change(
                        "Write `" + one + "`",
                        readings.size() == 1,
                        new TextEdit(amount.span(), one)))
            .toList());
  }

  private static String written(List<String> readings) {
    return "`" + String.join("` or `", readings) + "`";
  }

  private void reportWrongUnit(Item.Amount amount, Unit unit, Wanted wanted) {
    List<String> readings = wanted.readings(amount);
    report.add(
        Fault.WRONG_UNIT,
        amount.span(),
        wanted.name + " takes " + wanted.unit.dimension().description() + ", not " + unit.symbol(),
        unit == Unit.DECIBEL && !readings.isEmpty()
            ? "A gain in dB says how much; a level needs to say against what."
            : unit == Unit.DBU && wanted.unit == Unit.DBFS
                ? "Which level in dBFS it is, the `alignment` of the session says."
                : "",
        readings.isEmpty()
            ? "Write it in " + wanted.unit.symbol() + aligned(amount, unit, wanted.unit) + "."
            : "Write " + written(readings) + ".",
        readings.stream()
            .map(
                one ->
                    report.change(
                        "Write `" + one + "`",
                        readings.size() == 1,
                        new TextEdit(amount.span(), one)))
            .toList());
  }

  private Optional<Quantity> make(Item.Amount amount, Wanted wanted, double value) {
    return make(amount, wanted.unit.dimension(), value, wanted.setting);
  }

  private Optional<Quantity> make(
      Item.Amount amount, Dimension dimension, double value, Optional<Setting> setting) {
    try {
      return Optional.of(Quantity.of(dimension, value));
    } catch (IllegalArgumentException impossible) {
      boolean isSign = value < 0 && isMeantWithoutSign(amount, dimension, setting);
      String mended = amount.number().substring(isSign ? 1 : 0);
      report.add(
          Fault.IMPOSSIBLE_VALUE,
          amount.span(),
          "`" + amount.number() + "` is not possible here",
          impossible.getMessage() + ".",
          isSign ? "Write `" + mended + "`, without the sign." : "Write another value.",
          isSign
              ? List.of(
                  report.change(
                      "Write `" + mended + "`", true, new TextEdit(amount.numberSpan(), mended)))
              : List.of());
      return Optional.empty();
    }
  }

  /** Whether the sign alone keeps a number from being a value of the setting. */
  private static boolean isMeantWithoutSign(
      Item.Amount amount, Dimension dimension, Optional<Setting> setting) {
    Optional<Double> number = parse(amount.number()).map(Math::abs);
    if (setting.isEmpty() || number.isEmpty()) {
      return false;
    }
    return amount.unit().isPresent()
        ? Readings.isIn(setting.get(), number.get(), amount.unit().get())
        : Readings.isPossible(setting.get(), dimension, number.get());
  }

  /** An example of how an analogue level becomes a digital one. */
  private static String aligned(Item.Amount amount, Unit unit, Unit wanted) {
    Optional<Double> dbu = parse(amount.number());
    return unit == Unit.DBU && wanted == Unit.DBFS && dbu.isPresent()
        ? ": under `alignment 0 dBu = -18 dBFS` it is "
            + NumberText.format(dbu.get() - EXAMPLE_BELOW_FULL_SCALE)
            + " dBFS"
        : "";
  }

  private Optional<Double> number(Item.Amount amount) {
    String text = amount.number();
    if (text.indexOf(',') >= 0) {
      reportComma(amount);
      return Optional.empty();
    }
    if (amount.kind() == SyntaxKind.FRACTION) {
      int slash = text.indexOf('/');
      return parse(text.substring(0, slash))
          .flatMap(top -> parse(text.substring(slash + 1)).map(bottom -> top / bottom));
    }
    return parse(text);
  }

  private void reportComma(Item.Amount amount) {
    String text = amount.number();
    String decimals = text.replace(',', '.');
    List<String> readings = new ArrayList<>();
    if (text.matches("\\D?\\d{1,3}(,\\d{3})+")) {
      readings.add(text.replace(",", ""));
      decimals = decimals.replaceFirst("\\.?0+$", "");
    }
    if (parse(decimals).isPresent()) {
      readings.add(decimals);
    }
    report.add(
        Fault.DECIMAL_COMMA,
        amount.numberSpan(),
        "`" + text + "` has a comma",
        "Here the decimals follow a point, and thousands are not parted.",
        readings.isEmpty()
            ? "Write one number with a point."
            : "Write `" + String.join("` or `", readings) + "`, as it was meant.",
        readings.stream()
            .map(
                one ->
                    report.change(
                        "Write `" + one + "`",
                        readings.size() == 1,
                        new TextEdit(amount.numberSpan(), one)))
            .toList());
  }

  /** Parses digits with a point and any of the signs that the lexer accepts. */
  static Optional<Double> parse(String text) {
    String plain = text.replace('\u2212', '-').replace('\u2013', '-');
    try {
      return Optional.of(Double.parseDouble(plain));
    } catch (NumberFormatException tooStrange) {
      return Optional.empty();
    }
  }

  /** Rounds to two significant digits, as one would say it. */
  static double round(double value) {
    return new BigDecimal(value).round(new MathContext(2)).doubleValue();
  }

  /** Spells a number as the notation does. */
  static String spell(double value) {
    return NumberText.format(value);
  }
}
