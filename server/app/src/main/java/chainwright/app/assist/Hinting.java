package chainwright.app.assist;

import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.Scope;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the remarks to be shown in a text.
 *
 * <p>They are kept few. A stage that is bypassed or cannot be designed yet has none, so that
 * nothing jumps while a line is being written. Which values by omission are shown is said at {@link
 * OmittedSettings}; a note's name is shown on the piano's keys only, up to the highest that the
 * source plays; a corner only where it is not where the line says.
 *
 * @param scope what the names mean
 * @param wanted the kinds of remarks to look for
 */
public record Hinting(Scope scope, Set<Hint.Kind> wanted) {

  /**
   * Copies the kinds.
   *
   * @param scope what the names mean
   * @param wanted the kinds of remarks
   */
  public Hinting {
    wanted = Set.copyOf(wanted);
  }

  /**
   * Finds the remarks in a part of a file.
   *
   * @param file the file
   * @param range the part that is seen, from the file's start
   * @return the remarks, in the order of the text
   */
  public List<Hint> in(SourceFile file, TextSpan range) {
    List<Hint> hints = new ArrayList<>();
    int last = file.tree().sectionAt(range.end());
    for (int i = file.tree().sectionAt(range.start()); i <= last && !wanted.isEmpty(); i++) {
      int start = file.tree().startOf(i);
      Lowered lowered = file.sections().get(i);
      lowered
          .definition()
          .ifPresent(definition -> of(definition).forEach(hint -> hints.add(hint.plus(start))));
    }
    return hints.stream()
        .filter(hint -> wanted.contains(hint.kind()))
        .filter(hint -> range.isTouchedBy(hint.offset()))
        .sorted(Comparator.comparingInt(Hint::offset).thenComparing(Hint::kind, BY_NEARNESS))
        .toList();
  }

  /** At one place, what is about the last word comes before what is about the line. */
  private static final Comparator<Hint.Kind> BY_NEARNESS =
      Comparator.<Hint.Kind>naturalOrder().reversed();

  private List<Hint> of(Definition definition) {
    List<Hint> hints = new ArrayList<>();
    if (definition instanceof Definition.Track track) {
      track.declarations().lowestNote().flatMap(Hinting::lowestNote).ifPresent(hints::add);
      collect(new PathBuilder(scope).build(track).elements(), track.section(), hints);
    } else if (definition instanceof Definition.Preset preset) {
      collect(new PathBuilder(scope).build(preset), preset.section(), hints);
    }
    return hints;
  }

  private static Optional<Hint> lowestNote(Declarations.LowestNote lowest) {
    boolean isNamed = Character.isLetter(lowest.text().charAt(0));
    return isNamed
        ? Optional.empty()
        : StageHints.note(lowest.frequency().hertz(), lowest.span().end());
  }

  private void collect(List<PathElement> elements, Section section, List<Hint> into) {
    List<StageElement> before = new ArrayList<>();
    for (PathElement element : elements) {
      if (element instanceof StageElement stage && !stage.isBypassed()) {
        boolean isWrittenHere =
            stage.place().section() == section
                && stage.appliedAt().isEmpty()
                && stage.sound().isPresent();
        if (isWrittenHere) {
          into.addAll(StageHints.of(stage, before));
          collect(stage.sideChain(), section, into);
        }
        before.add(stage);
      } else if (element instanceof SplitElement split && split.appliedAt().isEmpty()) {
        split.branches().forEach(branch -> collect(branch.elements(), section, into));
      }
    }
  }
}
