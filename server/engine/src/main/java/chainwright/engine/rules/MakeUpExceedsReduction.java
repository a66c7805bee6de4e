package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageSound;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Written;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A compressor gives back more than it can take.
 *
 * <p>Why: a comparison is then decided by loudness.
 *
 * <p>At fault: {@code make-up +6 dB with an expected reduction of 2 dB}. Not at fault: {@code
 * make-up +1.8 dB}.
 */
public final class MakeUpExceedsReduction implements Rule {

  private static final double MARGIN_DB = 1;

  private static final RuleCard CARD =
      new RuleCard(
          "make-up-exceeds-reduction",
          Severity.INFO,
          "More make-up than reduction",
          "More make-up than reduction is a level boost in disguise. A comparison is then"
              + " decided by loudness, not by control.",
          List.of("KATZ", "CP"));

  /** Makes the rule, which has no state. */
  public MakeUpExceedsReduction() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (StageElement element : evidence.path().stages()) {
      Optional<Written> makeUp = element.stage().settings().written("make-up");
      if (makeUp.isEmpty()) {
        continue;
      }
      double makeUpDb = element.stage().settings().number("make-up").orElse(0.0);
      Optional<Double> expected = element.stage().settings().number("expected-reduction");
      Optional<Double> reductionDb = expected.isPresent() ? expected : largest(element);
      boolean isAtFault = reductionDb.isPresent() && makeUpDb > reductionDb.get() + MARGIN_DB;
      if (isAtFault) {
        report.accept(
            finding(evidence, element, makeUpDb, reductionDb.get(), expected.isPresent()));
      }
    }
  }

  /** The reduction of a peak at full scale: the most there can be. */
  private static Optional<Double> largest(StageElement element) {
    return element.sound().flatMap(StageSound::curve).map(curve -> curve.gainReductionDb(0));
  }

  private static Finding finding(
      Evidence evidence,
      StageElement element,
      double makeUpDb,
      double reductionDb,
      boolean isExpected) {
    String matching = Figures.change(Math.floor(10 * reductionDb) / 10);
    return evidence.finding(
        CARD,
        Mends.at(element, "make-up"),
        "a make-up of "
            + Figures.change(makeUpDb)
            + " is more than the "
            + Figures.amount(reductionDb)
            + (isExpected
                ? " of reduction that are expected"
                : " that a peak at full scale, the worst case, would be turned down by"),
        "Try " + matching + ", and compare at equal loudness.",
        List.of(),
        List.of(
            Edits.changing(
                "Write `" + matching + "`",
                true,
                List.of(Mends.set(element, "make-up", matching)))));
  }
}
