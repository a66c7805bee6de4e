package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Definition;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Something that changes level or phase stands behind the output ceiling.
 *
 * <p>Why: a ceiling only holds if nothing changes level or phase behind it.
 *
 * <p>At fault: {@code true-peak-limiter}, then a shelf. Not at fault: dither, a rate conversion, a
 * delay. A ceiling is the last limiter of a track that goes nowhere else: a true-peak limiter, or a
 * plain one on a bus or where {@code max-true-peak} is declared. Pure attenuation is a hint only.
 */
public final class ProcessingAfterCeiling implements Rule {

  private static final Set<String> HARMLESS =
      Set.of("dither", "sample-rate-conversion", "delay", "align", "polarity");

  private static final RuleCard CARD =
      new RuleCard(
          "processing-after-ceiling",
          Severity.ERROR,
          "Processing behind the ceiling",
          "A ceiling only holds if nothing changes level or phase behind it. Even a cut can raise a"
              + " peak through phase.",
          List.of("KATZ", "CALC"));

  /** Makes the rule, which has no state. */
  public ProcessingAfterCeiling() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    if (!evidence.track().declarations().routes().isEmpty()) {
      return;
    }
    List<StageElement> stages = evidence.path().placed();
    int ceiling = -1;
    for (int i = 0; i < stages.size(); i++) {
      ceiling = isCeiling(evidence.track(), stages.get(i)) ? i : ceiling;
    }
    for (int i = ceiling + 1; ceiling >= 0 && i < stages.size(); i++) {
      boolean isKnown =
          !stages.get(i).word().equals("gain")
              || stages.get(i).stage().settings().isDirectionKnown();
      if (isKnown && !HARMLESS.contains(stages.get(i).word())) {
        report.accept(finding(evidence, stages.get(ceiling), stages.get(i)));
      }
    }
  }

  private static boolean isCeiling(Definition.Track track, StageElement element) {
    boolean isLast = track.isBus() || track.declarations().maxTruePeak().isPresent();
    return !element.isPartial()
        && (element.word().equals("true-peak-limiter")
            || (element.word().equals("limiter") && isLast));
  }

  private static Finding finding(Evidence evidence, StageElement ceiling, StageElement after) {
    boolean isAttenuation = after.word().equals("gain") && after.context().number("gain", 0) <= 0;
    String level =
        ceiling.stage().settings().value("ceiling").map(value -> " of " + value).orElse("");
    return evidence.finding(
        CARD,
        isAttenuation ? Severity.HINT : Severity.ERROR,
        StageOrder.at(after),
        "`" + after.word() + "` stands behind the output ceiling" + level,
        "Move the line above the `" + ceiling.word() + "` line.",
        List.of(StageOrder.related(ceiling, "the ceiling that no longer holds")),
        StageOrder.moveBefore(
            evidence,
            "Move `" + after.word() + "` before `" + ceiling.word() + "`",
            List.of(after),
            ceiling));
  }
}
