package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * A boost works where most adults hear nothing.
 *
 * <p>Why: who adds it may not hear it, and coders often cut it.
 *
 * <p>At fault: {@code bell 18 kHz +4 dB Q 2}. Not at fault: {@code high-shelf 10 kHz +2 dB}.
 */
public final class BoostBeyondHearing implements Rule {

  private static final double LEAST_GAIN_DB = 2;
  private static final double LIMIT_HZ = 16_000;
  private static final double MOST_SHARE = 0.7;
  private static final double HIGHEST_HZ = 20_000;
  private static final double STEEPEST_RISING_Q = Math.sqrt(0.5);
  private static final double SHELF_SHARE = 0.4;

  private static final RuleCard CARD =
      new RuleCard(
          "boost-beyond-hearing",
          Severity.HINT,
          "A boost beyond hearing",
          "In one study everyone under 30 heard 16 kHz, only half heard 20 kHz; of the 51"
              + " to 60 year-olds nobody heard 20 kHz and of the 61 to 70 nobody 18 kHz. Those"
              + " were test tones at high level: in music the limit lies lower, so the engineer"
              + " may not hear what he adds.",
          List.of("EHF"));

  /** Makes the rule, which has no state. */
  public BoostBeyondHearing() {}

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

  /** Asks whether a stage is such a boost, so that other rules need not speak of its frequency. */
  static boolean isAtFault(StageElement element) {
    return EqualiserMoves.isMove(element)
        && !element.word().equals("low-shelf")
        && EqualiserMoves.gainDb(element) >= LEAST_GAIN_DB
        && (EqualiserMoves.centreHz(element) >= LIMIT_HZ
            || (canLieAbove(element) && EqualiserMoves.shareAbove(element, LIMIT_HZ) > MOST_SHARE));
  }

  /**
   * Asks whether so much of a boost that begins below the limit can lie above, without looking at
   * its response. A bell has as much below its centre as above; a shelf has half of its gain or
   * more from its cutoff to the limit, of which a fifth is left to the curve's deviation, and
   * nowhere more than at the end of what is heard, or than its bound if it may overshoot.
   */
  private static boolean canLieAbove(StageElement element) {
    if (element.word().equals("bell")) {
      return false;
    }
    boolean isRising = element.stage().settings().number("Q").orElse(0.0) <= STEEPEST_RISING_Q;
    double boundDb =
        EqualiserMoves.response(element)
            .map(one -> isRising ? one.estimateAt(HIGHEST_HZ).mostDb() : one.boundDecibels())
            .orElse(0.0);
    double above = boundDb * Math.log(HIGHEST_HZ / LIMIT_HZ);
    double below =
        SHELF_SHARE
            * EqualiserMoves.gainDb(element)
            * Math.log(LIMIT_HZ / EqualiserMoves.centreHz(element));
    return above > MOST_SHARE * (above + below);
  }

  private static Finding finding(Evidence evidence, StageElement element) {
    String setting = element.word().equals("bell") ? "centre" : "cutoff";
    String lower = element.word().equals("bell") ? "12 kHz" : "10 kHz";
    List<Fix> fixes = new ArrayList<>();
    fixes.add(
        Edits.changing("Write `" + lower + "`", true, List.of(Mends.set(element, setting, lower))));
    List<PlacedEdit> removal = Mends.remove(element.place().section(), element.stage().span());
    if (!removal.isEmpty()) {
      fixes.add(Edits.changing("Remove the boost", false, removal));
    }
    return evidence.finding(
        CARD,
        Mends.at(element, setting),
        "a boost of "
            + Figures.change(EqualiserMoves.gainDb(element))
            + " at "
            + Figures.hertz(EqualiserMoves.centreHz(element))
            + " lies beyond what most adults hear: "
            + Figures.percent(EqualiserMoves.shareAbove(element, LIMIT_HZ))
            + " of it is above 16 kHz",
        "Lower it to 10 or 12 kHz, or remove it; check what its skirt does below.",
        List.of(),
        fixes);
  }
}
