package chainwright.engine.rules;

import chainwright.dsp.filter.FrequencyGrid;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.catalogue.Family;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Parallel paths are added whose filters turn the phase differently.
 *
 * <p>Why: blending a turned copy with the straight one makes a third response nobody designed.
 *
 * <p>At fault: a dry path and one with {@code high-pass 120 Hz 24 dB/oct}. Not at fault: the same
 * filter before the split. Each path is compared with the first, from 20 Hz to 20 kHz or to 0.45 of
 * the sample rate; what is late rather than filtered is another rule's.
 */
public final class BlendOfShiftedPaths implements Rule {

  private static final double TURN_RADIANS = Math.toRadians(60);
  private static final double SHARED_DB = 10;
  private static final double LOWEST_HZ = 20;
  private static final double HIGHEST_HZ = 20_000;
  private static final double HIGHEST_SHARE_OF_RATE = 0.45;
  private static final int POINTS = 241;
  private static final Set<Family> FILTERS = Set.of(Family.FILTER, Family.EQUALISER);
  private static final Set<String> MOVES_IN_TIME = Set.of("delay", "align", "polarity", "echo");

  private static final RuleCard CARD =
      new RuleCard(
          "blend-of-shifted-paths",
          Severity.WARNING,
          "A blend of paths that are turned differently",
          "Blending a turned copy with the straight one makes a third response nobody designed. The"
              + " drawn curve of the filter is then not what is heard.",
          List.of("CALC"));

  /** Where two paths differ most in phase while both are heard. */
  private record Turn(double hertz, double radians) {}

  /** Makes the rule, which has no state. */
  public BlendOfShiftedPaths() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (PathElement element : evidence.path().elements()) {
      boolean isParallel =
          element instanceof SplitElement split
              && split.step() instanceof Step.Parallel
              && !split.isBypassed()
              && split.unread().isEmpty()
              && split.branches().size() > 1;
      if (isParallel) {
        check(evidence, (SplitElement) element, report);
      }
    }
  }

  private static void check(Evidence evidence, SplitElement split, Consumer<Finding> report) {
    double highestHz = Math.min(HIGHEST_HZ, HIGHEST_SHARE_OF_RATE * evidence.path().rate().hertz());
    double[] hertz = FrequencyGrid.logarithmic(LOWEST_HZ, highestHz, POINTS).toHertz();
    PathBranch first = split.branches().get(0);
    for (PathBranch other : split.branches().subList(1, split.branches().size())) {
      Turn turn = largestTurn(first.response(), other.response(), hertz);
      List<StageElement> filters = filters(other).isEmpty() ? filters(first) : filters(other);
      boolean isOfFilters = !filters.isEmpty() && !movesInTime(first) && !movesInTime(other);
      if (isOfFilters && turn.radians() > TURN_RADIANS) {
        report.accept(finding(evidence, split, other, filters, turn));
      }
    }
  }

  private static Turn largestTurn(Response a, Response b, double[] hertz) {
    double[] levelsA = a.toDecibels(hertz);
    double[] levelsB = b.toDecibels(hertz);
    double[] phasesA = a.toWrappedPhase(hertz);
    double[] phasesB = b.toWrappedPhase(hertz);
    Turn largest = new Turn(hertz[0], 0);
    for (int i = 0; i < hertz.length; i++) {
      double radians = Math.abs(Math.IEEEremainder(phasesA[i] - phasesB[i], 2 * Math.PI));
      boolean areShared = Math.abs(levelsA[i] - levelsB[i]) <= SHARED_DB;
      largest = areShared && radians > largest.radians() ? new Turn(hertz[i], radians) : largest;
    }
    return largest;
  }

  private static List<StageElement> filters(PathBranch branch) {
    List<StageElement> filters = new ArrayList<>();
    for (PathElement element : branch.elements()) {
      boolean isFilter =
          element instanceof StageElement stage
              && !stage.isBypassed()
              && FILTERS.contains(stage.stage().kind().family());
      if (isFilter) {
        filters.add((StageElement) element);
      }
    }
    return filters;
  }

  private static boolean movesInTime(PathBranch branch) {
    return branch.elements().stream()
        .anyMatch(one -> one instanceof StageElement stage && MOVES_IN_TIME.contains(stage.word()));
  }

  private static Finding finding(
      Evidence evidence,
      SplitElement split,
      PathBranch branch,
      List<StageElement> filters,
      Turn turn) {
    return evidence.finding(
        CARD,
        StageOrder.at(filters.get(0)),
        "At "
            + Figures.hertz(turn.hertz())
            + " the paths lie "
            + Math.round(Math.toDegrees(turn.radians()))
            + " degrees apart and within 10 dB of each other; their sum there is "
            + Figures.change(split.response().decibelsAt(turn.hertz())),
        "Put the filter before the split, or filter the whole signal.",
        List.of(
            new Finding.Related(
                new Place(split.place().section(), branch.branch().lineSpan()),
                "the path that is added to the first")),
        fixes(evidence, split, filters));
  }

  private static List<Fix> fixes(
      Evidence evidence, SplitElement split, List<StageElement> filters) {
    boolean isOwn =
        evidence.track().steps().contains(split.step())
            && filters.stream().allMatch(one -> one.appliedAt().isEmpty());
    if (!isOwn) {
      return List.of();
    }
    List<PlacedEdit> edits = new ArrayList<>();
    for (StageElement filter : filters) {
      edits.addAll(
          Edits.moveBefore(
              split.place().section(), filter.stage().span(), split.step().lineSpan()));
    }
    return List.of(Edits.changing("Filter before the split", false, edits));
  }
}
