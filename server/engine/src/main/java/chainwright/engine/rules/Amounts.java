package chainwright.engine.rules;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.model.Value;
import chainwright.notation.model.Written;
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

  /** Spells what is written, as the setting takes it. */
  static String spell(Written written) {
    return of(written).isEmpty() ? written.value().toString() : rewrite(written, value -> value);
  }

  /** Writes the value anew, each number of it changed. */
  static String rewrite(Written written, DoubleUnaryOperator change) {
    Setting setting = written.setting();
    List<Double> values = of(written).stream().map(change::applyAsDouble).toList();
    String last = ValueText.of(setting, values.get(values.size() - 1));
    if (values.size() < 2) {
      return last;
    }
    // Both ends are written even where they meet.
    String both = ValueText.range(setting, values.get(0), values.get(1));
    return both.equals(last) ? last + " to " + last : both;
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
