package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * An effect on a bus fed by sends lets dry sound through.
 *
 * <p>Why: dry sound comes back a second time.
 *
 * <p>At fault: {@code reverb 1.4 s blend 40 %}. Not at fault: {@code reverb 1.4 s}.
 */
public final class ReturnNotFullyWet implements Rule {

  private static final double WET = 100;
  private static final Set<String> EFFECTS = Set.of("reverb", "echo");

  private static final RuleCard CARD =
      new RuleCard(
          "return-not-fully-wet",
          Severity.WARNING,
          "A return that is not fully wet",
          "Dry sound comes back a second time and changes level or combs. Turning the"
              + " return up then also turns the source up.",
          List.of("CP", "CALC"));

  /** Makes the rule, which has no state. */
  public ReturnNotFullyWet() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    if (!isReturn(evidence)) {
      return;
    }
    for (StageElement element : evidence.path().stages()) {
      double blend = element.stage().settings().number("blend").orElse(WET);
      if (EFFECTS.contains(element.word()) && !element.isPartial() && blend < WET) {
        report.accept(finding(evidence, element, blend));
      }
    }
  }

  private static boolean isReturn(Evidence evidence) {
    String name = evidence.track().name().text();
    return evidence.track().isBus()
        && evidence.scope().tracks().stream()
            .flatMap(track -> track.declarations().sends().stream())
            .anyMatch(send -> send.bus().text().equals(name));
  }

  private static Finding finding(Evidence evidence, StageElement element, double blend) {
    double dryShare = 1 - blend / WET;
    return evidence.finding(
        CARD,
        Mends.at(element, "blend"),
        "this bus is fed by sends, and "
            + Figures.percent(dryShare)
            + " of what comes back is dry: up to "
            + Figures.change(20 * Math.log10(1 + dryShare))
            + " at a send of 0 dB",
        "Write `blend 100 %`.",
        List.of(),
        List.of(
            Edits.changing(
                "Write `blend 100 %`", true, List.of(Mends.set(element, "blend", "100 %")))));
  }
}
