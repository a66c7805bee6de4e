package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.model.Note;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Step;
import chainwright.notation.model.Written;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What the rules about the order of stages share: places, and edits that put lines elsewhere. */
final class StageOrder {

  private static final Set<String> COMPRESSION = Set.of("compressor", "limiter");
  private static final Set<String> DISTORTION = Set.of("saturation", "clipper");
  private static final Set<String> GATING = Set.of("gate", "expander");

  private StageOrder() {}

  /** The stages that see the whole signal, in order. */
  static List<StageElement> mainLine(Evidence evidence) {
    return whole(evidence.path().stages());
  }

  /** The stages that see the whole signal, in order, those still being written included. */
  static List<StageElement> placed(Evidence evidence) {
    return whole(evidence.path().placed());
  }

  private static List<StageElement> whole(List<StageElement> stages) {
    List<StageElement> line = new ArrayList<>();
    for (StageElement stage : stages) {
      if (!stage.isPartial()) {
        line.add(stage);
      }
    }
    return line;
  }

  /** Whether a setting is written, or something unreadable on the line may be meant for it. */
  static boolean mayBeWritten(StageElement element, String setting) {
    Settings settings = element.stage().settings();
    return settings.written(setting).isPresent()
        || settings.kind().setting(setting).filter(settings::mayBeUnread).isPresent();
  }

  static boolean isCompression(StageElement element) {
    return COMPRESSION.contains(element.word());
  }

  static boolean isDistortion(StageElement element) {
    return DISTORTION.contains(element.word());
  }

  static boolean isGating(StageElement element) {
    return GATING.contains(element.word());
  }

  /** The stage's word; for a stage of a preset, the line that applies it. */
  static Place at(StageElement element) {
    return element
        .appliedAt()
        .orElse(new Place(element.place().section(), element.stage().word().span()));
  }

  /** A setting where it is written, else the stage's word. */
  static Place at(StageElement element, String setting) {
    return element.appliedAt().isPresent()
        ? element.appliedAt().get()
        : element
            .stage()
            .settings()
            .written(setting)
            .map(Written::span)
            .map(span -> new Place(element.place().section(), span))
            .orElse(at(element));
  }

  static Finding.Related related(StageElement element, String what) {
    return new Finding.Related(at(element), what);
  }

  /**
   * Whether its line can be moved: a line of the chain itself, outside every structure, that it has
   * for itself.
   */
  static boolean isMovable(Evidence evidence, StageElement element) {
    return evidence.track().steps().stream().anyMatch(step -> step == element.stage())
        && Edits.areAlone(evidence.track().section(), withNotes(element));
  }

  /** A fix that moves lines before another; none where one of them stands elsewhere. */
  static List<Fix> moveBefore(
      Evidence evidence, String title, List<StageElement> moved, StageElement before) {
    boolean canMove =
        isMovable(evidence, before) && moved.stream().allMatch(one -> isMovable(evidence, one));
    if (!canMove || moved.isEmpty()) {
      return List.of();
    }
    List<PlacedEdit> edits = new ArrayList<>();
    for (StageElement one : moved) {
      edits.addAll(
          Edits.moveBefore(evidence.track().section(), withNotes(one), before.stage().lineSpan()));
    }
    return List.of(Edits.changing(title, true, edits));
  }

  /** A fix that moves one line behind another; none where one of them stands elsewhere. */
  static List<Fix> moveBehind(
      Evidence evidence, String title, StageElement moved, StageElement behind) {
    if (!isMovable(evidence, behind) || !isMovable(evidence, moved)) {
      return List.of();
    }
    Section section = evidence.track().section();
    PlacedEdit removal = Edits.removeLines(section, withNotes(moved));
    TextSpan lines = removal.edit().span();
    int target = Edits.removeLines(section, withNotes(behind)).edit().span().end();
    String text = section.text().substring(lines.start(), lines.end());
    PlacedEdit insertion =
        new PlacedEdit(section, new TextEdit(new TextSpan(target, target), text));
    return List.of(Edits.changing(title, true, List.of(removal, insertion)));
  }

  /** A fix that removes lines; none where one of them stands elsewhere. */
  static List<Fix> remove(Evidence evidence, String title, StageElement removed) {
    return isMovable(evidence, removed)
        ? List.of(
            Edits.changing(
                title,
                false,
                List.of(Edits.removeLines(evidence.track().section(), withNotes(removed)))))
        : List.of();
  }

  /** A fix that writes a setting anew, or adds it where it is not written. */
  static List<Fix> write(
      Evidence evidence, StageElement element, String setting, String value, boolean isPreferred) {
    if (element.appliedAt().isPresent()
        || element.place().section() != evidence.track().section()) {
      return List.of();
    }
    Section section = element.place().section();
    Optional<Written> written = element.stage().settings().written(setting);
    boolean isByUnit =
        element.stage().kind().setting(setting).filter(Setting::isPositional).isPresent();
    String added = isByUnit ? value : setting + " " + value;
    PlacedEdit edit =
        written
            .map(one -> Edits.replaceValue(section, one, value))
            .orElseGet(() -> Edits.append(section, element.stage().lineSpan(), added));
    return List.of(Edits.changing("Write `" + added + "`", isPreferred, List.of(edit)));
  }

  /** A line of its own below a stage and its notes; none where the stage shares its lines. */
  static Optional<PlacedEdit> lineBelow(StageElement element, String words) {
    Section section = element.place().section();
    TextSpan lines = Edits.removeLines(section, withNotes(element)).edit().span();
    String text = section.text();
    String indent = text.substring(lines.start(), element.stage().span().start());
    boolean isAlone = indent.isBlank() && text.substring(0, lines.end()).endsWith("\n");
    return isAlone
        ? Optional.of(
            new PlacedEdit(
                section,
                new TextEdit(new TextSpan(lines.end(), lines.end()), indent + words + "\n")))
        : Optional.empty();
  }

  private static TextSpan withNotes(StageElement element) {
    Step.Stage stage = element.stage();
    TextSpan span = stage.span();
    for (Note note : stage.clauses().notes()) {
      span = span.union(note.span());
    }
    return span;
  }
}
