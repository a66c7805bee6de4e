package chainwright.app.assist;

import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Value;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Writes what holds for each setting of a stage: its value, its range as a bar, its sources. */
final class SettingLines {

  private static final int CELLS = 24;

  /** What the signs of a bar mean. */
  static final String KEY =
      "In the bars: `\u25c6` the value, `\u2593` cautious, `\u2592` usual, `\u2591` beyond.";

  private SettingLines() {}

  /** All settings in use, one a line, in a table of Markdown; then the sources of the ranges. */
  static String of(Settings settings, Optional<SourceKind> source) {
    StringBuilder table = new StringBuilder();
    Set<String> citations = new LinkedHashSet<>();
    for (Setting setting : settings.kind().settings()) {
      Optional<Value> value = settings.value(setting.name());
      boolean isWritten = settings.written(setting.name()).isPresent();
      if (!isWritten && !settings.isInEffect(setting)) {
        continue;
      }
      if (value.isEmpty() && !(setting.byOmission() instanceof Default.Computed)) {
        continue;
      }
      table
          .append("- `")
          .append(setting.name())
          .append("` ")
          .append(value.map(one -> Settings.inWords(setting, one)).orElse("computed"))
          .append(isWritten ? "" : " (default)")
          .append(settings.isInEffect(setting) ? "" : " (does nothing here)");
      settings
          .row(setting, source)
          .ifPresent(
              row -> {
                table.append("\n  - ").append(range(setting, row, settings));
                row.range().sources().stream().map(Citation::spelt).forEach(citations::add);
              });
      table.append('\n');
    }
    if (!citations.isEmpty()) {
      table
          .append('\n')
          .append(KEY)
          .append(" Ranges")
          .append(source.map(kind -> " for " + kind.inWords()).orElse(""))
          .append(": ")
          .append(Cited.briefly(List.copyOf(citations), settings.kind().word()))
          .append(".\n");
    }
    return table.toString();
  }

  /** One range: a bar from extreme to extreme, with the value's place, and the usual ends. */
  static String range(Setting setting, RangeRow row, Settings settings) {
    TradeRange range = row.range();
    String words =
        "usual"
            + row.direction().inWords()
            + " "
            + ValueText.range(setting, range.usualLow(), range.usualHigh())
            + ", cautious "
            + ValueText.range(setting, range.cautiousLow(), range.cautiousHigh());
    return number(setting, settings).map(value -> "`" + bar(range, value) + "` ").orElse("")
        + words;
  }

  /** Light where it is uncommon, medium where usual, dark where cautious; a mark at the value. */
  private static String bar(TradeRange range, double value) {
    double low =
        Math.min(
            Math.min(range.extremeBelow().orElse(range.usualLow()), range.usualLow()),
            Math.min(range.cautiousLow(), value));
    double high =
        Math.max(
            Math.max(range.extremeAbove().orElse(range.usualHigh()), range.usualHigh()),
            Math.max(range.cautiousHigh(), value));
    boolean isLogarithmic = low > 0 && high / low > 10;
    StringBuilder bar = new StringBuilder();
    int mark = cell(value, low, high, isLogarithmic);
    for (int i = 0; i < CELLS; i++) {
      double at = position(i, low, high, isLogarithmic);
      boolean isCautious = at >= range.cautiousLow() && at <= range.cautiousHigh();
      boolean isUsual = at >= range.usualLow() && at <= range.usualHigh();
      bar.append(i == mark ? '\u25c6' : isCautious ? '\u2593' : isUsual ? '\u2592' : '\u2591');
    }
    return bar.toString();
  }

  private static double position(int cell, double low, double high, boolean isLogarithmic) {
    double share = (cell + 0.5) / CELLS;
    return isLogarithmic ? low * Math.pow(high / low, share) : low + (high - low) * share;
  }

  private static int cell(double value, double low, double high, boolean isLogarithmic) {
    double share =
        high <= low
            ? 0.5
            : isLogarithmic
                ? Math.log(value / low) / Math.log(high / low)
                : (value - low) / (high - low);
    return Math.max(0, Math.min(CELLS - 1, (int) (share * CELLS)));
  }

  private static Optional<Double> number(Setting setting, Settings settings) {
    return settings
        .number(setting.name())
        .map(
            base ->
                setting.takes() instanceof Takes.InUnit takes
                    ? base / takes.unit().toBase()
                    : base);
  }
}
