package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import chainwright.quantity.NumberText;
import java.util.List;
import java.util.function.Consumer;

/**
 * A bell raises a narrow region.
 *
 * <p>Why: A narrow peak rings and sticks out on single notes.
 *
 * <p>At fault: {@code bell 1.2 kHz +6 dB Q 8}. Not at fault: {@code bell 1.2 kHz +2 dB Q 0.8}.
 */
public final class NarrowBoost implements Rule {

  private static final double LEAST_GAIN_DB = 3;
  private static final double WIDEST_Q = 4;
  private static final String WIDE = "1.5";

  private static final RuleCard CARD =
      new RuleCard(
          "narrow-boost",
          Severity.WARNING,
          "A narrow boost",
          "Narrow peaks ring and stick out on single notes. Ears find peaks sooner than" + " dips.",
          List.of("BUC", "TO88", "CP"));

  /** Makes the rule, which has no state. */
  public NarrowBoost() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (StageElement element : evidence.path().stages()) {
      if (isAtFault(element)) {
        report.accept(finding(evidence, element));
      }
    }
  }

  /** Asks whether a stage is such a boost, so that other rules need not speak of its Q. */
  static boolean isAtFault(StageElement element) {
    return element.word().equals("bell")
        && EqualiserMoves.gainDb(element) >= LEAST_GAIN_DB
        && element.stage().settings().number("Q").orElse(0.0) > WIDEST_Q;
  }

  private static Finding finding(Evidence evidence, StageElement element) {
    String gain = Figures.change(EqualiserMoves.gainDb(element));
    String q = NumberText.format(element.context().number("Q"));
    Fix wider =
        Edits.changing("Write `Q " + WIDE + "`", true, List.of(Mends.set(element, "Q", WIDE)));
    return evidence.finding(
        CARD,
        Mends.at(element, "Q"),
        "a boost of " + gain + " with Q " + q + " rings",
        "Try a Q of " + WIDE + " or less, or cut the neighbours instead.",
        List.of(),
        List.of(wider));
  }
}
