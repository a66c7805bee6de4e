package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A reverb or an echo stands in a chain and lets nothing of the sound itself through.
 *
 * <p>Why: the singer is gone, and only the room is left.
 *
 * <p>At fault: {@code reverb 1.8 s} in the chain of a choir. Not at fault: {@code reverb 1.8 s
 * blend 20 %}, a reverb in one of parallel paths, or on a bus that the chain is sent to. The blend
 * that is proposed leaves a steady sound 12 dB above its reverb, 20 log (80/20) [computed]; so much
 * is a usual place for a return [common practice, no source].
 */
public final class DrySoundLost implements Rule {

  private static final double WET = 100;
  private static final String USUAL = "20 %";
  private static final Set<String> EFFECTS = Set.of("reverb", "echo");
  private static final String RETURN = "effect-return";

  private static final RuleCard CARD =
      new RuleCard(
          "dry-sound-lost",
          Severity.WARNING,
          "Nothing left of the sound itself",
          "At a blend of 100 % only the reflections come out, and nothing of what was played. That is"
              + " right on a bus fed by sends, where the sound itself goes beside it.",
          List.of("CALC", "CP"));

  /** Makes the rule, which has no state. */
  public DrySoundLost() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    boolean isReturn =
        evidence.track().isBus()
            || evidence.path().source().filter(kind -> kind.word().equals(RETURN)).isPresent();
    for (StageElement element : evidence.path().placed()) {
      Optional<Double> blend = element.stage().settings().number("blend");
      boolean isWet = blend.isPresent() && blend.get() >= WET;
      if (EFFECTS.contains(element.word()) && !isReturn && !element.isPartial() && isWet) {
        report.accept(finding(evidence, element));
      }
    }
  }

  private static Finding finding(Evidence evidence, StageElement element) {
    return evidence.finding(
        CARD,
        Mends.at(element, "blend"),
        "This " + element.word() + " lets nothing of " + evidence.sourceInWords() + " through",
        "Put the "
            + element.word()
            + " on a bus and send to it, or write `blend "
            + USUAL
            + "` or what is meant.",
        List.of(),
        element.appliedAt().isPresent()
            ? List.of()
            : List.of(
                Edits.changing(
                    "Write `blend " + USUAL + "`",
                    true,
                    List.of(Mends.set(element, "blend", USUAL)))));
  }
}
