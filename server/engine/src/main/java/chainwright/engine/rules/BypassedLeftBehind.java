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
import chainwright.notation.text.TextSpan;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A stage is bypassed and nothing says why it is kept.
 *
 * <p>Why: it may be switched on by accident at recall.
 *
 * <p>At fault: {@code bell 300 Hz -2 dB bypassed}. Not at fault: {@code a bypassed stage with a
 * note}.
 */
public final class BypassedLeftBehind implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "bypassed-left-behind",
          Severity.HINT,
          "A bypassed stage left behind",
          "A reader wonders what it is for, and it may be switched on by accident at" + " recall.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public BypassedLeftBehind() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    checkAll(evidence, evidence.path().elements(), report);
  }

  private static void checkAll(
      Evidence evidence, List<PathElement> elements, Consumer<Finding> report) {
    for (PathElement element : elements) {
      if (element instanceof StageElement stage) {
        check(evidence, element, stage.stage(), report);
      } else if (element instanceof SplitElement split) {
        check(evidence, element, split.step(), report);
        for (PathBranch branch : split.branches()) {
          checkAll(evidence, branch.elements(), report);
        }
      }
    }
  }

  private static void check(
      Evidence evidence, PathElement element, Step step, Consumer<Finding> report) {
    Optional<TextSpan> bypassed = step.clauses().bypassed();
    if (bypassed.isEmpty() || !step.clauses().notes().isEmpty()) {
      return;
    }
    List<PlacedEdit> removal = Mends.remove(element.place().section(), step.span());
    List<Fix> fixes =
        removal.isEmpty()
            ? List.of()
            : List.of(new Fix("Remove it", Fix.Effect.KEEPS_THE_SOUND, true, removal));
    report.accept(
        evidence.finding(
            CARD,
            element.appliedAt().orElse(new Place(element.place().section(), bypassed.get())),
            "this is bypassed, and nothing says why it is kept",
            "Remove it, or say in a note below it what it is kept for.",
            List.of(),
            fixes));
  }
}
