package chainwright.engine.rules;

import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.catalogue.Family;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Step;
import chainwright.notation.model.Written;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The settings of one stage or structure and where they are written.
 *
 * @param settings the settings
 * @param section the section they stand in
 * @param appliedAt where their preset is applied, if they come from one
 * @param clauses what else is said beside them
 * @param isBypassed whether they have no effect at present
 * @param part what part of the sound they work on
 * @param rate the sample rate that they work at
 */
record Said(
    Settings settings,
    Section section,
    Optional<Place> appliedAt,
    Clauses clauses,
    boolean isBypassed,
    Part part,
    SampleRate rate) {

  /**
   * What part of the sound settings work on, and so whether the ranges of its source judge them.
   */
  enum Part {
    /** The sound itself. */
    WHOLE,
    /**
     * The dynamics of a copy that is added to the sound as it was, or a filter that leaves a part
     * of the sound to another path.
     */
    COPY,
    /** Only what a detector hears. */
    DETECTOR
  }

  /** Returns where a finding about a part of the line should stand. */
  Place at(TextSpan span) {
    return appliedAt.orElse(new Place(section, span));
  }

  /**
   * Returns what is written for certain: without the settings that something unreadable on the line
   * may be meant for as well.
   */
  List<Written> written() {
    if (settings.unread().isEmpty()) {
      return settings.written();
    }
    List<Written> certain = new ArrayList<>();
    for (Written one : settings.written()) {
      if (!settings.mayBeUnread(one.setting())) {
        certain.add(one);
      }
    }
    return certain;
  }

  /** Returns the settings of every stage, side chain and structure of a path, in order. */
  static List<Said> in(SignalPath path) {
    List<Said> found = new ArrayList<>();
    addAll(path.elements(), Part.WHOLE, false, found);
    return found;
  }

  private static void addAll(
      List<PathElement> elements, Part part, boolean isShare, List<Said> into) {
    for (PathElement element : elements) {
      if (element instanceof StageElement stage) {
        boolean isOfAShare = isShare && stage.stage().kind().family() == Family.FILTER;
        Part own = isDynamic(stage) ? part : isOfAShare ? Part.COPY : Part.WHOLE;
        into.add(of(stage, stage.stage(), own));
        for (Step step : stage.stage().sideChain()) {
          if (step instanceof Step.Stage inner) {
            into.add(of(stage, inner, Part.DETECTOR));
          }
        }
      } else if (element instanceof SplitElement split) {
        if (split.step() instanceof Step.Insert insert) {
          into.add(of(split, insert.settings(), insert.clauses()));
        }
        if (split.step() instanceof Step.Multiband multiband) {
          into.add(of(split, multiband.settings(), multiband.clauses()));
        }
        for (PathBranch branch : split.branches()) {
          boolean isOwn = !(split.step() instanceof Step.Insert);
          if (isOwn) {
            into.add(of(split, branch.branch().settings(), branch.branch().clauses()));
          }
          addAll(
              branch.elements(),
              isBesideUntouched(split) ? Part.COPY : part,
              isShare || split.step() instanceof Step.Parallel,
              into);
        }
      }
    }
  }

  /** Asks whether one of parallel paths leaves the dynamics of the sound as they were. */
  private static boolean isBesideUntouched(SplitElement split) {
    return split.step() instanceof Step.Parallel
        && split.branches().stream()
            .anyMatch(path -> path.elements().stream().noneMatch(Said::isDynamic));
  }

  private static boolean isDynamic(PathElement element) {
    return element instanceof StageElement stage
        && stage.stage().kind().family() == Family.DYNAMICS;
  }

  private static Said of(StageElement element, Step.Stage stage, Part part) {
    return new Said(
        stage.settings(),
        element.place().section(),
        element.appliedAt(),
        stage.clauses(),
        element.isBypassed(),
        part,
        element.rate());
  }

  private static Said of(SplitElement split, Settings settings, Clauses clauses) {
    return new Said(
        settings,
        split.place().section(),
        split.appliedAt(),
        clauses,
        split.isBypassed(),
        Part.WHOLE,
        split.rate());
  }
}
