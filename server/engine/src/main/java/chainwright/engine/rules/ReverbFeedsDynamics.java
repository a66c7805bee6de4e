package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A reverb or an echo stands in a chain before a compressor, a gate or a de-esser.
 *
 * <p>Why: the dynamics stage then works on the tail.
 *
 * <p>At fault: {@code reverb}, then {@code compressor}. Not at fault: the reverb behind, or on a
 * bus of its own that the chain is sent to.
 */
public final class ReverbFeedsDynamics implements Rule {

  private static final Set<String> TAILS = Set.of("reverb", "echo");
  private static final Set<String> WORKS_ON_TAILS =
      Set.of("compressor", "de-ess", "gate", "expander");

  private static final RuleCard CARD =
      new RuleCard(
          "reverb-feeds-dynamics",
          Severity.WARNING,
          "Reverberation that feeds the dynamics",
          "The dynamics stage then works on the tail: it pumps the room or chops it. Every change"
              + " of threshold then also changes how long the room seems.",
          List.of("IZH", "CP"));

  /** Makes the rule, which has no state. */
  public ReverbFeedsDynamics() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> line = StageOrder.placed(evidence);
    for (int i = 0; i < line.size() && !evidence.track().isBus(); i++) {
      StageElement last = null;
      for (StageElement later : line.subList(i, line.size())) {
        last = WORKS_ON_TAILS.contains(later.word()) ? later : last;
      }
      if (TAILS.contains(line.get(i).word()) && last != null) {
        report.accept(finding(evidence, line.get(i), last));
      }
    }
  }

  private static Finding finding(Evidence evidence, StageElement tail, StageElement last) {
    return evidence.finding(
        CARD,
        StageOrder.at(tail),
        "The `" + last.word() + "` behind hears the tail of this " + tail.word(),
        "Put the "
            + tail.word()
            + " on a bus and send to it, or move its line behind the `"
            + last.word()
            + "` line.",
        List.of(StageOrder.related(last, "works on the tail")),
        StageOrder.moveBehind(
            evidence, "Move `" + tail.word() + "` behind `" + last.word() + "`", tail, last));
  }
}
