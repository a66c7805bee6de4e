package chainwright.app.assist;

import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.Takes;
import chainwright.quantity.Dimension;
import chainwright.quantity.NumberText;
import chainwright.quantity.Unit;

/** Spells the values of settings as a writer would. */
final class Spelt {

  private static final int THOUSAND = 1000;

  private Spelt() {}

  /**
   * A value in the setting's unit, such as "3.1 kHz"; changes that may be either way are signed.
   */
  static String of(Setting setting, double value) {
    if (!(setting.takes() instanceof Takes.InUnit takes)) {
      return NumberText.format(value);
    }
    Unit unit = unit(setting, value);
    if (unit == Unit.TO_ONE) {
      return NumberText.format(value) + unit.symbol();
    }
    boolean isEitherWay =
        takes.unit().dimension() == Dimension.GAIN
            && setting.low() instanceof Limit.Fixed low
            && setting.high() instanceof Limit.Fixed high
            && low.value() < 0
            && high.value() > 0;
    double number = value * takes.unit().toBase() / unit.toBase();
    return (isEitherWay && value > 0 ? "+" : "") + NumberText.format(number) + " " + unit.symbol();
  }

  /** A value in the setting's own unit, without a plus, as it is listed beside others. */
  static String unsigned(Setting setting, double value) {
    boolean isTime = setting.takes() instanceof Takes.InUnit in && in.unit() == Unit.MILLISECOND;
    String text = isTime ? NumberText.format(value) + " ms" : of(setting, value);
    return text.startsWith("+") ? text.substring(1) : text;
  }

  /** A range in the setting's unit, such as "5.5 to 9 kHz". */
  static String span(Setting setting, double low, double high) {
    String first = of(setting, low);
    boolean isShared = unit(setting, low) == unit(setting, high);
    return (isShared ? first.substring(0, first.indexOf(' ')) : first) + " to " + of(setting, high);
  }

  /** The unit in which a value reads best. */
  static Unit unit(Setting setting, double value) {
    if (!(setting.takes() instanceof Takes.InUnit takes)) {
      throw new IllegalArgumentException(setting.name() + " takes no unit");
    }
    boolean isLarge = Math.abs(value) >= THOUSAND;
    return switch (takes.unit()) {
      case HERTZ -> isLarge ? Unit.KILOHERTZ : Unit.HERTZ;
      case MILLISECOND -> isLarge ? Unit.SECOND : Unit.MILLISECOND;
      default -> takes.unit();
    };
  }

  /** Whether a text is a whole number with its sign, as the notation writes it. */
  static boolean isNumber(String text) {
    return text.matches("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)");
  }
}
