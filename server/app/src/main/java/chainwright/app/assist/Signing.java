package chainwright.app.assist;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.model.Lowered;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Written;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Says which settings the stage at the caret takes, and which of them the caret is at. */
public final class Signing {

  /** Behind these comes something of the author's, which is no setting. */
  private static final Set<String> CLAUSES = Set.of("as", "deliberate");

  private final Catalogue catalogue;
  private final Lowered section;
  private final int caret;

  private Signing(Catalogue catalogue, Lowered section, int caret) {
    this.catalogue = catalogue;
    this.section = section;
    this.caret = caret;
  }

  /**
   * Says what can be written at a place.
   *
   * @param catalogue the trade's knowledge
   * @param section the section that holds the caret, and what it says
   * @param caret the offset of the caret in it
   * @return the signature; empty where the caret is on no stage's line, in a comment or a text, or
   *     where a label or a reason is awaited
   */
  public static Optional<Signature> at(Catalogue catalogue, Lowered section, int caret) {
    return new Signing(catalogue, section, caret).signature();
  }

  private Optional<Signature> signature() {
    Optional<WrittenLine> line =
        WrittenLine.of(section.section(), caret)
            .filter(one -> !one.isQuoted() && !one.head().isEmpty());
    if (line.isEmpty()) {
      return Optional.empty();
    }
    List<String> words = line.get().words();
    Optional<StageKind> kind = catalogue.stage(words.get(0));
    if (kind.isEmpty() || CLAUSES.contains(words.get(words.size() - 1))) {
      return Optional.empty();
    }
    Optional<Settings> written =
        section
            .definition()
            .flatMap(definition -> SettingsAt.find(definition, caret))
            .filter(found -> found.kind().equals(kind.get()));
    Settings said = written.orElseGet(() -> new Settings(kind.get(), List.of()));
    Optional<Setting> active = active(kind.get(), words, written);
    List<Setting> settings =
        kind.get().settings().stream()
            .filter(
                one -> said.isInEffect(one) || !said.isFree(one) || active.equals(Optional.of(one)))
            .toList();
    Optional<SourceKind> source = line.get().around().source().flatMap(catalogue::source);
    RangeRow.Direction direction =
        StageLine.of(kind.get(), line.get().before(), List.of()).direction()
                == RangeRow.Direction.CUT
            ? RangeRow.Direction.CUT
            : written.map(Settings::direction).orElse(RangeRow.Direction.ANY);
    StringBuilder label = new StringBuilder(kind.get().word());
    List<Signature.Parameter> parameters = new ArrayList<>();
    for (Setting setting : settings) {
      boolean isRequired = setting.byOmission() instanceof Default.Required;
      label.append(isRequired ? "  " : "  [");
      int start = label.length();
      label.append(form(setting));
      parameters.add(
          new Signature.Parameter(
              start,
              label.length(),
              says(kind.get(), setting, setting.row(source, direction), source)));
      label.append(isRequired ? "" : "]");
    }
    return Optional.of(
        new Signature(
            label.toString(),
            kind.get().says(),
            parameters,
            active.isPresent()
                ? OptionalInt.of(settings.indexOf(active.get()))
                : OptionalInt.empty()));
  }

  /**
   * The setting at the caret: one whose words the caret touches; else one that is named and still
   * without its value; else the next that is not written.
   */
  private Optional<Setting> active(StageKind kind, List<String> words, Optional<Settings> written) {
    List<Written> complete = written.map(Settings::written).orElse(List.of());
    Optional<Setting> touched =
        complete.stream()
            .filter(one -> one.span().isTouchedBy(caret))
            .map(Written::setting)
            .findFirst();
    return touched
        .or(() -> awaited(kind, words, complete))
        .or(() -> next(kind.settings(), complete));
  }

  private static Optional<Setting> awaited(
      StageKind kind, List<String> words, List<Written> complete) {
    for (int i = words.size() - 1; i > 0; i--) {
      Optional<Setting> named = kind.setting(words.get(i));
      if (named.isPresent()) {
        return named.filter(one -> !isWritten(one, complete));
      }
    }
    return Optional.empty();
  }

  /** The first that must be written; else the first after the last one written; else the first. */
  private static Optional<Setting> next(List<Setting> settings, List<Written> complete) {
    List<Setting> open = settings.stream().filter(one -> !isWritten(one, complete)).toList();
    int last = complete.stream().mapToInt(one -> settings.indexOf(one.setting())).max().orElse(-1);
    return open.stream()
        .filter(one -> one.byOmission() instanceof Default.Required)
        .findFirst()
        .or(() -> open.stream().filter(one -> settings.indexOf(one) > last).findFirst())
        .or(() -> open.stream().findFirst());
  }

  private static boolean isWritten(Setting setting, List<Written> complete) {
    return complete.stream().anyMatch(one -> one.setting().equals(setting));
  }

  private static String form(Setting setting) {
    if (setting.takes() instanceof Takes.InUnit takes) {
      String unit = takes.unit() == Unit.TO_ONE ? "n:1" : takes.unit().symbol();
      return setting.name() + (takes.isSpan() ? " from to " : " ") + unit;
    }
    return setting.name();
  }

  private static String says(
      StageKind kind, Setting setting, Optional<RangeRow> row, Optional<SourceKind> source) {
    StringBuilder text = new StringBuilder(setting.says());
    if (setting.takes() instanceof Takes.OneOf oneOf) {
      text.append(" One of: ").append(String.join(", ", oneOf.words())).append('.');
    }
    if (setting.byOmission() instanceof Default.Amount amount) {
      text.append(" Default: ").append(ValueText.of(setting, amount.value())).append('.');
    } else if (setting.byOmission() instanceof Default.Word word) {
      text.append(" Default: ").append(word.word()).append('.');
    } else if (setting.byOmission() instanceof Default.Computed computed) {
      text.append(" Default: ").append(computed.how()).append('.');
    }
    row.ifPresent(
        found ->
            text.append(" Usual")
                .append(source.map(one -> " for " + one.inWords()).orElse(""))
                .append(found.direction().inWords())
                .append(": ")
                .append(
                    ValueText.range(setting, found.range().usualLow(), found.range().usualHigh()))
                .append(". Source: ")
                .append(
                    Cited.briefly(
                        found.range().sources().stream().map(Citation::spelt).toList(),
                        kind.word() + " " + setting.name()))
                .append('.'));
    return text.toString();
  }
}
