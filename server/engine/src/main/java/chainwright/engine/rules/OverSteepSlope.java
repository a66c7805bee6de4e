package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Written;
import java.util.List;
import java.util.function.Consumer;

/**
 * A pass filter falls more steeply than corrective work needs.
 *
 * <p>Why: a steep filter rings, turns the phase around its cutoff and softens what is percussive.
 *
 * <p>At fault: {@code high-pass 80 Hz 36 dB/oct}. Not at fault: {@code high-pass 66 Hz 18 dB/oct}.
 */
public final class OverSteepSlope implements Rule {

  private static final double STEEP_DB_PER_OCTAVE = 36;
  private static final String GENTLE = "18 dB/oct";

  private static final RuleCard CARD =
      new RuleCard(
          "over-steep-slope",
          Severity.WARNING,
          "A filter steeper than needed",
          "A steep filter rings and turns the phase around its cutoff; percussive sounds soften,"
              + " and with several microphones the result is hard to predict.",
          List.of("SENQ", "CALC"));

  /** Makes the rule, which has no state. */
  public OverSteepSlope() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (StageElement element : evidence.path().stages()) {
      if (isAtFault(element)) {
        element
            .stage()
            .settings()
            .written("slope")
            .ifPresent(slope -> report.accept(finding(evidence, element, slope)));
      }
    }
  }

  /** Asks whether a stage is such a filter, so that other rules need not speak of its slope. */
  static boolean isAtFault(StageElement element) {
    boolean isPass = element.word().equals("high-pass") || element.word().equals("low-pass");
    return isPass && element.stage().settings().number("slope").orElse(0.0) >= STEEP_DB_PER_OCTAVE;
  }

  private static Finding finding(Evidence evidence, StageElement element, Written slope) {
    Place place = element.appliedAt().orElse(new Place(element.place().section(), slope.span()));
    Fix gentler =
        Edits.changing(
            "Write `" + GENTLE + "`",
            true,
            List.of(Edits.replaceValue(element.place().section(), slope, GENTLE)));
    return evidence.finding(
        CARD,
        place,
        slope.value() + " at " + element.context().frequency("cutoff") + " is very steep",
        "Try " + GENTLE + " or less, and move the cutoff instead.",
        List.of(),
        List.of(gentler));
  }
}
