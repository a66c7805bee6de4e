package chainwright.engine.rules;

import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Step;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Consumer;

/**
 * One parallel path comes later than another.
 *
 * <p>Why: a late copy makes a comb filter, with its first notch at half the inverse of the delay.
 * Source: the delayed copy is opposite where the delay is half a period.
 *
 * <p>At fault: a dry path beside one with a delay of 1.6 ms. Not at fault: the dry path delayed by
 * as much. What counts is the time of {@code delay} and {@code align}, each path against the
 * latest; less than half a sample is none. The latencies of stages and inserts are made equal by
 * the notation itself, so they do not count.
 */
public final class ParallelPathLate implements Rule {

  private static final Set<String> SHIFTS = Set.of("delay", "align");

  private static final RuleCard CARD =
      new RuleCard(
          "parallel-path-late",
          Severity.ERROR,
          "A parallel path that comes late",
          "A late copy makes a comb filter: at 1 ms the first notch lies at 500 Hz. The hollow tone"
              + " is then blamed on the compressor.",
          List.of("CALC"));

  /** Makes the rule, which has no state. */
  public ParallelPathLate() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (PathElement element : evidence.path().elements()) {
      if (element instanceof SplitElement split
          && split.step() instanceof Step.Parallel
          && !split.isBypassed()) {
        check(evidence, split, report);
      }
    }
  }

  private static void check(Evidence evidence, SplitElement split, Consumer<Finding> report) {
    List<PathBranch> branches =
        split.branches().stream()
            .filter(branch -> branch.branch().clauses().bypassed().isEmpty())
            .toList();
    double latestSeconds =
        branches.stream().mapToDouble(branch -> delaySeconds(branch)).max().orElse(0);
    double halfSampleSeconds = 0.5 / split.rate().hertz();
    for (PathBranch branch : branches) {
      double earlySeconds = latestSeconds - delaySeconds(branch);
      if (earlySeconds > halfSampleSeconds) {
        report.accept(finding(evidence, split, branch, earlySeconds));
      }
    }
  }

  private static double delaySeconds(PathBranch branch) {
    double seconds = 0;
    for (PathElement element : branch.elements()) {
      boolean isShift =
          element instanceof StageElement stage
              && !stage.isBypassed()
              && SHIFTS.contains(stage.word());
      seconds += isShift ? Math.max(0, ((StageElement) element).context().delaySeconds()) : 0;
    }
    return seconds;
  }

  private static Finding finding(
      Evidence evidence, SplitElement split, PathBranch early, double earlySeconds) {
    Place place =
        split.appliedAt().orElse(new Place(split.place().section(), early.branch().lineSpan()));
    String delay = "delay " + milliseconds(earlySeconds);
    boolean isOwn = evidence.track().steps().contains(split.step());
    List<Fix> fixes = isOwn ? fixes(split.place().section(), early, delay) : List.of();
    return evidence.finding(
        CARD,
        place,
        "This path comes "
            + Figures.milliseconds(earlySeconds)
            + " before the latest; their sum has its first notch at "
            + Figures.hertz(0.5 / earlySeconds),
        "Write `" + delay + "` on this path.",
        List.of(new Finding.Related(split.place(), "the paths are added here")),
        fixes);
  }

  private static String milliseconds(double seconds) {
    String text = String.format(Locale.ROOT, "%.4f", seconds * 1000);
    return text.replaceAll("\\.?0+$", "") + " ms";
  }

  /** The delay at the start of the path's block, or as its block if it has none. */
  private static List<Fix> fixes(Section section, PathBranch early, String delay) {
    int lineEnd = early.branch().lineSpan().end();
    String rest = section.text().substring(lineEnd, early.branch().span().end());
    int brace = rest.indexOf('{');
    int at = brace < 0 ? lineEnd : lineEnd + brace + 1;
    boolean isBlockOfLines = brace >= 0 && rest.substring(brace + 1).stripLeading().length() > 0;
    boolean isLineBreak = isBlockOfLines && rest.substring(brace + 1).matches("(?s)[ \\t]*\\R.*");
    if (brace >= 0 && !isLineBreak) {
      return List.of();
    }
    String text = brace < 0 ? " { " + delay + " }" : "\n" + delay;
    TextEdit edit = new TextEdit(new TextSpan(at, at), text);
    return List.of(
        Edits.changing(
            "Write `" + delay + "` on this path", true, List.of(new PlacedEdit(section, edit))));
  }
}
