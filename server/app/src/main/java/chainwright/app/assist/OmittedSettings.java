package chainwright.app.assist;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Written;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Says which values hold in a stage because nothing is written, as far as they change its sound.
 *
 * <p>Left out are: what the notation's reference states once for all stages (family, curve,
 * detector, blend, stereo link, make-up, and likewise the normalisation, the oversampling, the pan
 * law, the shape of the dither's noise); what does nothing as it is, which is a value of 0, one
 * section, or the Q of a high- or low-pass; and what the stage does not use, such as the window of
 * an RMS detector beside a peak detector. At most four are named; the tooltip has all of them.
 */
final class OmittedSettings {

  private static final int MOST = 4;

  private static final Set<String> STATED_ONCE =
      Set.of(
          "family",
          "curve",
          "detector",
          "blend",
          "stereo-link",
          "make-up",
          "normalised",
          "oversampling",
          "law",
          "noise-shaping");

  private static final Set<String> WITHOUT_EFFECT =
      Set.of("high-pass Q", "low-pass Q", "all-pass sections");

  private OmittedSettings() {}

  /** The remark at the end of a stage's settings; empty where nothing of weight is left out. */
  static Optional<Hint> hint(StageElement stage) {
    Settings settings = stage.stage().settings();
    List<Setting> omitted =
        settings.kind().settings().stream().filter(one -> isOfWeight(one, settings)).toList();
    if (omitted.isEmpty()) {
      return Optional.empty();
    }
    List<String> named = omitted.stream().map(OmittedSettings::written).toList();
    String label =
        named.stream().limit(MOST).collect(Collectors.joining("  "))
            + (named.size() > MOST ? " \u2026" : "");
    List<String> lines = new ArrayList<>();
    lines.add("Not written, so these defaults apply:\n");
    omitted.forEach(one -> lines.add(line(one, stage)));
    boolean isWritable =
        omitted.stream().noneMatch(one -> one.byOmission() instanceof Default.Computed);
    return Optional.of(
        new Hint(
            Hint.Kind.OMITTED,
            endOfSettings(stage),
            label,
            String.join("\n", lines),
            isWritable ? "  " + String.join("  ", named) : ""));
  }

  /** Where the settings of a stage end, before its label and what else is said of it. */
  static int endOfSettings(StageElement stage) {
    return stage.stage().settings().written().stream()
        .map(Written::span)
        .mapToInt(span -> span.end())
        .max()
        .orElse(stage.stage().word().span().end());
  }

  private static boolean isOfWeight(Setting setting, Settings settings) {
    String name = settings.kind().word() + " " + setting.name();
    boolean isLeftAside =
        settings.written(setting.name()).isPresent()
            || STATED_ONCE.contains(setting.name())
            || WITHOUT_EFFECT.contains(name);
    if (isLeftAside || !settings.isInEffect(setting)) {
      return false;
    }
    if (setting.byOmission() instanceof Default.Amount amount) {
      return amount.value() != 0;
    }
    return setting.byOmission() instanceof Default.Word
        || setting.byOmission() instanceof Default.Computed;
  }

  /** The setting as one would write it. */
  private static String written(Setting setting) {
    String value = value(setting);
    return setting.isPositional() ? value : setting.name() + " " + value;
  }

  private static String value(Setting setting) {
    if (setting.byOmission() instanceof Default.Amount amount) {
      return ValueText.of(setting, amount.value());
    }
    return setting.byOmission() instanceof Default.Word word ? word.word() : "computed";
  }

  private static String line(Setting setting, StageElement stage) {
    StringBuilder line = new StringBuilder();
    line.append("- `").append(setting.name()).append("` ").append(value(setting));
    if (setting.byOmission() instanceof Default.Computed computed) {
      line.append(", ").append(computed.how());
    }
    line.append(": ").append(setting.says());
    stage
        .stage()
        .settings()
        .row(setting, stage.context().source())
        .ifPresent(row -> line.append(usual(setting, row, stage)));
    return line.toString();
  }

  private static String usual(Setting setting, RangeRow row, StageElement stage) {
    TradeRange range = row.range();
    String who = stage.context().source().map(kind -> " for " + kind.inWords()).orElse("");
    return " Usual"
        + who
        + row.direction().inWords()
        + ": "
        + ValueText.range(setting, range.usualLow(), range.usualHigh())
        + " ("
        + Cited.briefly(
            range.sources().stream().map(Citation::spelt).toList(),
            stage.word() + " " + setting.name())
        + ").";
  }
}
