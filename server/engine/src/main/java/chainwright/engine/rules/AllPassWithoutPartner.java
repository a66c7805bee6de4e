package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.catalogue.Family;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * An all-pass turns the phase of a lone chain, and nothing behind it can tell.
 *
 * <p>Why: alone, a phase rotation changes nothing that most listeners hear.
 *
 * <p>At fault: {@code all-pass 150 Hz} on a voice in no {@code group}. Not at fault: one with a
 * group, one on a parallel path, one before dynamics, saturation or a limiter, buses included.
 */
public final class AllPassWithoutPartner implements Rule {

  private static final Set<Family> NONLINEAR = Set.of(Family.DYNAMICS, Family.SATURATION);
  private static final String LIMITER_OF_DELIVERY = "true-peak-limiter";

  private static final RuleCard CARD =
      new RuleCard(
          "all-pass-without-partner",
          Severity.HINT,
          "An all-pass without a partner",
          "Alone, a phase rotation changes nothing that most listeners hear. It makes readers look"
              + " for a partner microphone that does not exist.",
          List.of("BL78", "CP"));

  /** Makes the rule, which has no state. */
  public AllPassWithoutPartner() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    if (evidence.track().isBus() || evidence.track().declarations().group().isPresent()) {
      return;
    }
    List<StageElement> stages = evidence.path().stages();
    for (int i = 0; i < stages.size(); i++) {
      StageElement element = stages.get(i);
      if (element.word().equals("all-pass") && !element.isPartial()) {
        List<StageElement> behind = new ArrayList<>(stages.subList(i + 1, stages.size()));
        evidence.busesAfter().forEach(bus -> behind.addAll(bus.stages()));
        if (behind.stream().noneMatch(AllPassWithoutPartner::isNonlinear)) {
          report.accept(finding(evidence, element));
        }
      }
    }
  }

  private static boolean isNonlinear(StageElement element) {
    return NONLINEAR.contains(element.stage().kind().family())
        || element.word().equals(LIMITER_OF_DELIVERY);
  }

  private static Finding finding(Evidence evidence, StageElement element) {
    return evidence.finding(
        CARD,
        StageOrder.at(element),
        "This all-pass at "
            + element.context().frequency("frequency")
            + " has no partner: the chain is in no group, and nothing behind it depends on phase",
        "Delete the line, or name the partner with `group`.",
        List.of(),
        StageOrder.remove(evidence, "Remove this `all-pass`", element));
  }
}
