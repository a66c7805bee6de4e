package chainwright.notation.lowering;

import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.quantity.Dimension;
import chainwright.quantity.NumberText;
import chainwright.quantity.Quantity;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.regex.Pattern;

/** What a number without its unit, or with a unit that is easily mistaken, may have meant. */
final class Readings {

  /** Where the session says nothing, as the reference states; it bounds what is offered. */
  private static final double USUAL_RATE_HZ = 48_000;

  /** A ratio to one digit; on a clock two digits follow the colon. */
  static final Pattern RATIO = Pattern.compile("[^:]*:\\d");

  private static final double ROUNDING = 1e-9;

  /** Units that people mistake for one another, since all of them are said as "dB". */
  private static final Set<Unit> SAID_AS_DB =
      Set.of(Unit.DECIBEL, Unit.DBFS, Unit.DBTP, Unit.DBU, Unit.LUFS, Unit.LU, Unit.DB_PER_OCTAVE);

  private Readings() {}

  /**
   * Returns how an amount can be written for a setting so that the setting can mean it: as it
   * stands, with the unit that it lacks, or with the unit that it was mistaken for.
   *
   * @return such as {@code -20 dBFS} for {@code -20 dB}; the likelier first; empty if it can be no
   *     value of this setting
   */
  static List<String> of(Setting setting, Item.Amount amount) {
    if (!(setting.takes() instanceof Takes.InUnit takes) || takes.isSpan()) {
      return List.of();
    }
    Unit expected = takes.unit();
    if (amount.kind() == SyntaxKind.COLON_NUMBER) {
      return withColon(setting, expected, amount.number());
    }
    Optional<Double> number = AmountReader.parse(amount.number());
    if (number.isEmpty()) {
      return List.of();
    }
    Optional<Unit> unit = amount.unit().flatMap(Unit::parse);
    if (amount.unit().isEmpty()) {
      return withUnit(setting, expected, amount.number(), number.get());
    }
    if (unit.isEmpty()) {
      return List.of();
    }
    boolean isSame = unit.get().dimension() == expected.dimension();
    boolean isMistaken = isMistaken(unit.get(), expected);
    Unit meant = isSame ? unit.get() : expected;
    return (isSame || isMistaken) && isPossible(setting, meant, number.get())
        ? List.of(spell(amount.number(), meant))
        : List.of();
  }

  /**
   * Whether one unit may have been written for another one, with the number of that. An analogue
   * level is another number than the digital one, unless its unit is not said at all.
   */
  private static boolean isMistaken(Unit written, Unit expected) {
    boolean isAnalogue = written == Unit.DBU || expected == Unit.DBU;
    boolean isPlain = written == Unit.DECIBEL || expected == Unit.DECIBEL;
    return SAID_AS_DB.contains(written)
        && SAID_AS_DB.contains(expected)
        && (isPlain || !isAnalogue);
  }

  /** A number with each unit of a dimension in which a place can mean it. */
  static List<String> withUnit(Dimension dimension, String text, DoublePredicate isPossible) {
    Optional<Double> number = AmountReader.parse(text);
    List<String> possible = new ArrayList<>();
    for (Unit unit : Unit.values()) {
      if (number.isPresent()
          && unit.dimension() == dimension
          && isPossible.test(unit.toBase(number.get()))) {
        possible.add(spell(text, unit));
      }
    }
    return possible;
  }

  /** Whether a setting can mean the number of an amount in a unit, or an end of its range. */
  static boolean isIn(Setting setting, Item.Amount amount, String symbol) {
    Optional<Double> number = AmountReader.parse(amount.number());
    return number.isPresent() && isIn(setting, number.get(), symbol);
  }

  /** Whether a setting can mean a number in a unit, or an end of its range. */
  static boolean isIn(Setting setting, double number, String symbol) {
    Optional<Unit> unit = Unit.parse(symbol);
    return unit.isPresent()
        && setting.takes() instanceof Takes.InUnit takes
        && takes.unit().dimension() == unit.get().dimension()
        && isPossible(setting, unit.get(), number);
  }

  /** A ratio or a position, which bear their unit; the position is not compared with the limits. */
  private static List<String> withColon(Setting setting, Unit expected, String text) {
    boolean isRatio = RATIO.matcher(text).matches();
    Dimension dimension = isRatio ? Dimension.RATIO : Dimension.TIME;
    if (expected.dimension() != dimension) {
      return List.of();
    }
    return isRatio
        ? AmountReader.parse(text.substring(0, text.indexOf(':')))
            .filter(number -> isPossible(setting, expected, number))
            .map(number -> List.of(text))
            .orElse(List.of())
        : List.of(text);
  }

  private static List<String> withUnit(Setting setting, Unit expected, String text, double number) {
    List<String> usual = new ArrayList<>();
    for (Unit unit : Unit.values()) {
      if (unit.dimension() == expected.dimension()
          && isPossible(setting, unit, number)
          && isUsual(setting, expected, unit, number)) {
        usual.add(spell(text, unit));
      }
    }
    if (!usual.isEmpty()) {
      return usual;
    }
    return isPossible(setting, expected, number) ? List.of(spell(text, expected)) : List.of();
  }

  private static String spell(String number, Unit unit) {
    return unit == Unit.TO_ONE ? number + unit.symbol() : number + " " + unit.symbol();
  }

  /** Whether a setting can mean a number in a unit at all. */
  private static boolean isPossible(Setting setting, Unit unit, double number) {
    return setting.takes() instanceof Takes.InUnit takes
        && isMeaningful(unit.dimension(), unit.toBase(number))
        && isWithin(setting, unit.toBase(number) / takes.unit().toBase());
  }

  /**
   * Returns single values that a range may have meant: its lower end, its middle, its upper end.
   * The middle of frequencies is the one that is as many octaves from both.
   */
  static List<String> within(Item.Range range) {
    Optional<Double> low = AmountReader.parse(range.low().number());
    Optional<Double> high = AmountReader.parse(range.high().number());
    Optional<String> lowUnit = range.low().unit().or(() -> range.high().unit());
    Optional<Unit> unit = range.high().unit().or(() -> range.low().unit()).flatMap(Unit::parse);
    if (low.isEmpty() || high.isEmpty() || unit.isEmpty()) {
      return List.of();
    }
    Optional<Unit> ofLow = lowUnit.flatMap(Unit::parse);
    List<String> ends =
        List.of(
            spell(range.low().number(), ofLow.orElse(unit.get())),
            spell(range.high().number(), unit.get()));
    if (!ofLow.equals(unit)) {
      return ends;
    }
    boolean isFrequency = unit.get().dimension() == Dimension.FREQUENCY;
    double between = isFrequency ? Math.sqrt(low.get() * high.get()) : (low.get() + high.get()) / 2;
    if (!Double.isFinite(between)) {
      return ends; // A frequency below 0, or numbers beyond all measure.
    }
    double middle = isFrequency ? AmountReader.round(between) : between;
    String sign = range.low().number().startsWith("+") && middle > 0 ? "+" : "";
    return List.of(ends.get(0), spell(sign + AmountReader.spell(middle), unit.get()), ends.get(1));
  }

  /** A range that the trade would write, such as "4 to 10 kHz". */
  static String example(Setting setting, Unit unit) {
    return setting
        .range(Optional.empty(), RangeRow.Direction.ANY)
        .map(usual -> ValueText.range(setting, usual.usualLow(), usual.usualHigh()))
        .orElse("1 to 2 " + unit.symbol());
  }

  /** The octave around a frequency; none if the setting cannot mean it, or it is no frequency. */
  static List<String> around(Setting setting, Item.Amount amount) {
    Optional<Unit> unit = amount.unit().flatMap(Unit::parse);
    Optional<Double> middle = AmountReader.parse(amount.number());
    if (unit.isEmpty()
        || unit.get().dimension() != Dimension.FREQUENCY
        || middle.isEmpty()
        || !(middle.get() > 0 && Double.isFinite(2 * middle.get()))) {
      return List.of();
    }
    double low = AmountReader.round(middle.get() / Math.sqrt(2));
    double high = AmountReader.round(middle.get() * Math.sqrt(2));
    return isPossible(setting, unit.get(), low) && isPossible(setting, unit.get(), high)
        ? List.of(AmountReader.spell(low) + " to " + spell(AmountReader.spell(high), unit.get()))
        : List.of();
  }

  /** What an amount is by its unit; a ratio and a clock bear theirs. */
  static Optional<Dimension> dimension(Item.Amount amount) {
    if (amount.kind() == SyntaxKind.COLON_NUMBER) {
      return Optional.of(
          RATIO.matcher(amount.number()).matches() ? Dimension.RATIO : Dimension.TIME);
    }
    return amount.unit().flatMap(Unit::parse).map(Unit::dimension);
  }

  /** Whether a setting without a unit can mean a number at all. */
  static boolean isPossible(Setting setting, Dimension dimension, double number) {
    return isMeaningful(dimension, number) && isWithin(setting, number);
  }

  /** Says which numbers a setting without a unit takes. */
  static String limits(Setting setting) {
    double low = end(setting.low(), Double.NEGATIVE_INFINITY);
    double high = end(setting.high(), Double.POSITIVE_INFINITY);
    return Double.isFinite(low) && Double.isFinite(high)
        ? "a number from " + NumberText.format(low) + " to " + NumberText.format(high)
        : "a plain number";
  }

  private static boolean isWithin(Setting setting, double value) {
    boolean isOffered =
        setting.offers().isEmpty()
            || setting.offers().stream().anyMatch(one -> Math.abs(one - value) < ROUNDING);
    return isOffered
        && value >= end(setting.low(), Double.NEGATIVE_INFINITY) - ROUNDING
        && value <= end(setting.high(), Double.POSITIVE_INFINITY) + ROUNDING;
  }

  private static boolean isMeaningful(Dimension dimension, double base) {
    try {
      Quantity.of(dimension, base);
      return true;
    } catch (IllegalArgumentException impossible) {
      return false;
    }
  }

  private static boolean isUsual(Setting setting, Unit expected, Unit unit, double number) {
    double value = unit.toBase(number) / expected.toBase();
    return setting
        .range(Optional.empty(), RangeRow.Direction.ANY)
        .filter(range -> range.verdict(value) == TradeRange.Verdict.USUAL)
        .isPresent();
  }

  private static double end(Limit limit, double open) {
    if (limit instanceof Limit.Fixed fixed) {
      return fixed.value();
    }
    return limit instanceof Limit.OfSampleRate share ? share.share() * USUAL_RATE_HZ : open;
  }
}
