package chainwright.app.assist;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Written;
import chainwright.quantity.NumberText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

  /**
   * Another setting whose word decides whether a setting is used.
   *
   * @param setting the other setting
   * @param words the words with which it is used
   */
  private record Needs(String setting, Set<String> words) {}

  /** What is used with certain words only, as the catalogue says of each. */
  private static final Map<String, Needs> USED_WITH =
      Map.ofEntries(
          Map.entry("compressor rms-window", new Needs("detector", Set.of("rms", "programme"))),
          Map.entry("compressor release", new Needs("detector", Set.of("peak", "rms"))),
          Map.entry("compressor fast", new Needs("detector", Set.of("programme"))),
          Map.entry("compressor slow", new Needs("detector", Set.of("programme"))),
          Map.entry("compressor split", new Needs("detector", Set.of("programme"))),
          Map.entry("de-ess slope", new Needs("mode", Set.of("split-band"))),
          Map.entry("all-pass Q", new Needs("order", Set.of("second-order"))),
          Map.entry("saturation asymmetry", new Needs("character", Set.of("asymmetric", "valve"))),
          Map.entry("saturation bias-shift", new Needs("character", Set.of("valve"))),
          Map.entry("saturation treble-saturation", new Needs("character", Set.of("tape"))),
          Map.entry("saturation head-bump", new Needs("character", Set.of("tape"))),
          Map.entry("saturation bass-saturation", new Needs("character", Set.of("transformer"))));

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
    lines.add("Not written, so the catalogue's defaults hold:\n");
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
    if (isLeftAside || !isUsed(name, settings)) {
      return false;
    }
    if (setting.byOmission() instanceof Default.Amount amount) {
      return amount.value() != 0;
    }
    return setting.byOmission() instanceof Default.Word
        || setting.byOmission() instanceof Default.Computed;
  }

  private static boolean isUsed(String name, Settings settings) {
    if (name.equals("width slope")) {
      return settings.written("mono-below").isPresent();
    }
    Needs needs = USED_WITH.get(name);
    return needs == null
        || settings.word(needs.setting()).filter(needs.words()::contains).isPresent();
  }

  /** The setting as one would write it. */
  private static String written(Setting setting) {
    String value = value(setting);
    return setting.isPositional() ? value : setting.name() + " " + value;
  }

  private static String value(Setting setting) {
    if (setting.byOmission() instanceof Default.Amount amount) {
      return Spelt.unsigned(setting, amount.value());
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
        .range(setting, stage.context().source())
        .ifPresent(range -> line.append(usual(setting, range, stage)));
    return line.toString();
  }

  private static String usual(Setting setting, TradeRange range, StageElement stage) {
    String who =
        stage
            .context()
            .source()
            .map(kind -> " for " + kind.title().toLowerCase(Locale.ROOT))
            .orElse("");
    return " Usual"
        + who
        + ": "
        + NumberText.format(range.usualLow())
        + " to "
        + Spelt.unsigned(setting, range.usualHigh())
        + " ("
        + range.sources().stream().map(Citation::spelt).collect(Collectors.joining("; "))
        + ").";
  }
}
