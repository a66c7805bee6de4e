package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.function.Consumer;

/**
 * A tilt and a shelf of the same chain turn opposite ways.
 *
 * <p>Why: they mostly cancel.
 *
 * <p>At fault: {@code tilt +2 dB} with {@code high-shelf 8 kHz -2 dB}. Not at fault: a tilt alone,
 * or a shelf that goes the same way. A rising tilt lifts the top and lowers the bottom.
 */
public final class TiltFightsShelf implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "tilt-fights-shelf",
          Severity.HINT,
          "A tilt against a shelf",
          "They mostly cancel. One move is easier to hear, review and recall.",
          List.of("CALC", "CP"));

  /** Makes the rule, which has no state. */
  public TiltFightsShelf() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> line = StageOrder.mainLine(evidence);
    for (StageElement tilt : line) {
      for (StageElement shelf : line) {
        if (tilt.word().equals("tilt") && brightening(shelf) * tiltDb(tilt) < 0) {
          report.accept(finding(evidence, tilt, shelf));
        }
      }
    }
  }

  private static double tiltDb(StageElement tilt) {
    return tilt.context().number("tilt", 0);
  }

  /** More than 0 for a shelf that makes brighter, less for one that makes darker, else 0. */
  private static double brightening(StageElement element) {
    double gainDb = element.context().number("gain", 0);
    if (element.word().equals("high-shelf")) {
      return gainDb;
    }
    return element.word().equals("low-shelf") ? 0 - gainDb : 0;
  }

  private static Finding finding(Evidence evidence, StageElement tilt, StageElement shelf) {
    return evidence.finding(
        CARD,
        StageOrder.at(shelf),
        "`"
            + shelf.word()
            + "` "
            + Figures.change(shelf.context().number("gain"))
            + " works against `tilt` "
            + Figures.change(tiltDb(tilt)),
        "Fold both into one move.",
        List.of(StageOrder.related(tilt, "the tilt that it works against")),
        StageOrder.remove(evidence, "Remove this `" + shelf.word() + "`", shelf));
  }
}
