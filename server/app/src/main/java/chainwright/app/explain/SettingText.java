package chainwright.app.explain;

import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.model.Settings;
import chainwright.quantity.Dimension;
import chainwright.quantity.NumberText;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Says in words what a setting takes, what it can mean, and what holds without it. */
final class SettingText {

  private SettingText() {}

  /** Returns what it takes, such as "a frequency in Hz or kHz, written without its name". */
  static String takes(Setting setting) {
    String kind = kind(setting.takes());
    return setting.isPositional() ? kind + ", written without its name" : kind;
  }

  private static String kind(Takes takes) {
    if (takes instanceof Takes.InUnit unit) {
      boolean isTime = unit.unit().dimension() == Dimension.TIME && !unit.isSpan();
      // Only a place in the recording is ever written as on a clock.
      String one = isTime ? "a time in us, ms or s" : unit.unit().dimension().description();
      return unit.isSpan() ? "two values and `to`: " + one : one;
    }
    if (takes instanceof Takes.OneOf words) {
      return "one of "
          + words.words().stream().map(word -> "`" + word + "`").collect(Collectors.joining(", "));
    }
    if (takes instanceof Takes.Quality) {
      return "a number";
    }
    if (takes instanceof Takes.PlainNumber) {
      return "a plain number";
    }
    return takes instanceof Takes.Name ? "the name of a chain, a bus or a label" : "nothing more";
  }

  /** Returns how it is written in a line, such as {@code [ratio :1]}; brackets: may be left out. */
  static String form(Setting setting) {
    String value =
        setting.takes() instanceof Takes.InUnit unit
            ? unit.isSpan() ? "LOW to HIGH " + unit.unit().symbol() : "N" + unit(unit.unit())
            : setting.takes() instanceof Takes.OneOf words
                ? String.join("|", words.words())
                : setting.takes() instanceof Takes.Name
                    ? "NAME"
                    : setting.takes() instanceof Takes.Flag ? "" : "N";
    boolean isNamed = !setting.isPositional() || setting.takes() instanceof Takes.Quality;
    String form = (isNamed ? setting.name() + " " + value : value).strip();
    return setting.byOmission() instanceof Default.Required ? form : "[" + form + "]";
  }

  /** Returns what holds where it is not written, as a sentence. */
  static String omission(Setting setting) {
    if (setting.byOmission() instanceof Default.Required) {
      return "It must be written.";
    }
    if (setting.byOmission() instanceof Default.Absent) {
      return "It may be left out.";
    }
    if (setting.byOmission() instanceof Default.Computed computed) {
      return "Default: computed, " + computed.how() + ".";
    }
    return Settings.byOmission(setting)
        .map(value -> "Default: " + Settings.inWords(setting, value) + ".")
        .orElse("");
  }

  /** Returns what it can mean at all, as a sentence; empty text where nothing limits it. */
  static String limits(Setting setting) {
    if (!setting.offers().isEmpty()) {
      return "It can be " + ValueText.offers(setting) + ".";
    }
    if (setting.low() instanceof Limit.Fixed low && setting.high() instanceof Limit.Fixed high) {
      return "It can be " + ValueText.range(setting, low.value(), high.value()) + ".";
    }
    String low = limit(setting.low(), setting);
    String high = limit(setting.high(), setting);
    if (low.isEmpty() && high.isEmpty()) {
      return "";
    }
    return low.isEmpty()
        ? "It can be at most " + high + "."
        : high.isEmpty()
            ? "It can be " + low + " or more."
            : "It can be " + low + " to " + high + ".";
  }

  private static String limit(Limit limit, Setting setting) {
    if (limit instanceof Limit.Fixed fixed) {
      return ValueText.of(setting, fixed.value());
    }
    if (limit instanceof Limit.OfSampleRate rate) {
      return NumberText.format(rate.share()) + " of the sample rate";
    }
    return limit instanceof Limit.OfSetting other ? "the `" + other.name() + "`" : "";
  }

  private static String unit(Unit unit) {
    return (unit == Unit.TO_ONE ? "" : " ") + unit.symbol();
  }

  /** Returns the usual ends, such as "60 to 110 Hz". */
  static String usual(Setting setting, TradeRange range) {
    return ValueText.range(setting, range.usualLow(), range.usualHigh());
  }

  /** Returns the ends of what rarely harms. */
  static String cautious(Setting setting, TradeRange range) {
    return ValueText.range(setting, range.cautiousLow(), range.cautiousHigh());
  }

  /** Returns where it is extreme, such as "from 160 Hz"; a dash where nowhere. */
  static String extreme(Setting setting, TradeRange range) {
    if (range.extremeBelow().isPresent() && range.extremeAbove().isPresent()) {
      double low = range.extremeBelow().getAsDouble();
      double high = range.extremeAbove().getAsDouble();
      return "to " + ValueText.range(setting, low, high).replaceFirst(" to ", ", from ");
    }
    List<String> ends = new ArrayList<>();
    range.extremeBelow().ifPresent(low -> ends.add("to " + ValueText.of(setting, low)));
    range.extremeAbove().ifPresent(high -> ends.add("from " + ValueText.of(setting, high)));
    return ends.isEmpty() ? "-" : String.join(", ", ends);
  }

  /** Returns for which gain a row holds, behind the name of a source; empty text for either. */
  static String direction(RangeRow row) {
    return row.direction() == RangeRow.Direction.ANY
        ? ""
        : " (" + row.direction().name().toLowerCase(Locale.ROOT) + ")";
  }
}
