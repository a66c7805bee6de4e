package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A microphone of a group is aligned behind a stage that depends on level.
 *
 * <p>Why: alignment is judged on the raw wave.
 *
 * <p>At fault: {@code gate}, then {@code align 1.2 ms}, in a chain with a {@code group}. Not at
 * fault: {@code align} first, or a chain in no group.
 */
public final class AlignBeforeNonlinear implements Rule {

  private static final Set<String> ALIGNS = Set.of("align", "polarity");

  private static final RuleCard CARD =
      new RuleCard(
          "align-before-nonlinear",
          Severity.INFO,
          "Alignment behind dynamics or saturation",
          "Alignment is judged on the raw wave; level-dependent stages hide the fit. Keyed stages"
              + " would also fire at the wrong time.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public AlignBeforeNonlinear() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    if (evidence.track().declarations().group().isEmpty()) {
      return;
    }
    StageElement nonlinear = null;
    for (StageElement element : StageOrder.placed(evidence)) {
      boolean dependsOnLevel =
          StageOrder.isCompression(element)
              || StageOrder.isGating(element)
              || StageOrder.isDistortion(element);
      nonlinear = nonlinear == null && dependsOnLevel ? element : nonlinear;
      if (nonlinear != null && ALIGNS.contains(element.word())) {
        report.accept(finding(evidence, nonlinear, element));
      }
    }
  }

  private static Finding finding(Evidence evidence, StageElement nonlinear, StageElement align) {
    return evidence.finding(
        CARD,
        StageOrder.at(align),
        "`"
            + align.word()
            + "` stands behind `"
            + nonlinear.word()
            + "`, which depends on the level",
        "Move the line to the top of the chain.",
        List.of(StageOrder.related(nonlinear, "works on the wave before it is aligned")),
        StageOrder.moveBefore(
            evidence,
            "Move `" + align.word() + "` before `" + nonlinear.word() + "`",
            List.of(align),
            nonlinear));
  }
}
