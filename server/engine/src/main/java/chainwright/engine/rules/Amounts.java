package chainwright.engine.rules;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Value;
import chainwright.notation.model.Written;
import chainwright.quantity.NumberText;
import chainwright.quantity.Quantity;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Reads and writes the numbers of settings in the settings' own units. */
final class Amounts {

  private Amounts() {}

  /** Returns the numbers that are written: one, two for a range, none for a word. */
  static List<Double> of(Written written) {
    if (written.value() instanceof Value.Of one) {
      return List.of(inUnit(written.setting(), one.quantity()));
    }
    if (written.value() instanceof Value.Span span) {
      return List.of(inUnit(written.setting(), span.low()), inUnit(written.setting(), span.high()));
    }
    return List.of();
  }

  /** Returns the greatest number that is written; negative infinity for a word. */
  static double most(Written written) {
    double most = Double.NEGATIVE_INFINITY;
    for (double one : of(written)) {
      most = Math.max(most, one);
    }
    return most;
  }

  /** Spells a number as the setting takes it: a size has no plus, and Q is no unit. */
  static String spell(Setting setting, double value) {
    if (setting.takes() instanceof Takes.Quality) {
      return NumberText.format(value);
    }
    String text =
        Settings.quantity(setting.takes(), value).map(Quantity::toString).orElse("" + value);
    return setting.isSize() && text.startsWith("+") ? text.substring(1) : text;
  }

  /** Spells what is written, as the setting takes it. */
  static String spell(Written written) {
    return of(written).isEmpty() ? written.value().toString() : rewrite(written, value -> value);
  }

  /** Writes the value anew, each number of it changed. */
  static String rewrite(Written written, DoubleUnaryOperator change) {
    List<String> parts =
        of(written).stream()
            .map(value -> spell(written.setting(), change.applyAsDouble(value)))
            .toList();
    return String.join(" to ", parts);
  }

  /** Names the setting and its value, such as "`attack` 12 ms". */
  static String named(Written written) {
    return "`" + written.setting().name() + "` " + spell(written);
  }

  private static double inUnit(Setting setting, Quantity quantity) {
    return setting.takes() instanceof Takes.InUnit unit
        ? quantity.baseValue() / unit.unit().toBase()
        : quantity.baseValue();
  }
}
