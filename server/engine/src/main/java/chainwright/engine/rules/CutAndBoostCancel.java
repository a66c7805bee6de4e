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
 * Two moves of one kind and opposite sign erase each other.
 *
 * <p>Why: they mostly erase each other.
 *
 * <p>At fault: {@code bell 300 Hz -4 dB, then bell 330 Hz +4 dB}. Not at fault: {@code bell 280 Hz
 * -2 dB}.
 */
public final class CutAndBoostCancel implements Rule {

  private static final double WORTH_KEEPING_DB = 0.5;

  private static final RuleCard CARD =
      new RuleCard(
          "cut-and-boost-cancel",
          Severity.INFO,
          "A cut and a boost that cancel",
          "They mostly erase each other: 4 dB down at 300 Hz and 4 dB up at 330 Hz leave"
              + " little of either. What is left is their phase shift.",
          List.of("CALC"));

  /** Makes the rule, which has no state. */
  public CutAndBoostCancel() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (List<StageElement> run : EqualiserMoves.runs(evidence.path())) {
      for (int i = 1; i < run.size(); i++) {
        for (StageElement earlier : run.subList(0, i)) {
          if (EqualiserMoves.cancel(earlier, run.get(i))) {
            report.accept(finding(evidence, earlier, run.get(i)));
          }
        }
      }
    }
  }

  private static Finding finding(Evidence evidence, StageElement earlier, StageElement later) {
    double between = Math.sqrt(EqualiserMoves.centreHz(earlier) * EqualiserMoves.centreHz(later));
    double leftDb =
        EqualiserMoves.decibelsAt(earlier, between) + EqualiserMoves.decibelsAt(later, between);
    return evidence.finding(
        CARD,
        Mends.at(later, "gain"),
        Figures.change(EqualiserMoves.gainDb(later))
            + " at "
            + Figures.hertz(EqualiserMoves.centreHz(later))
            + " and "
            + Figures.change(EqualiserMoves.gainDb(earlier))
            + " at "
            + Figures.hertz(EqualiserMoves.centreHz(earlier))
            + " leave "
            + Figures.change(leftDb)
            + " at "
            + Figures.hertz(between),
        "Delete both, or keep one with the difference.",
        List.of(new Finding.Related(Mends.at(earlier, "gain"), "the opposite move stands here")),
        fixes(earlier, later));
  }

  private static List<Fix> fixes(StageElement earlier, StageElement later) {
    double restDb = EqualiserMoves.gainDb(earlier) + EqualiserMoves.gainDb(later);
    boolean isEarlierLarger =
        Math.abs(EqualiserMoves.gainDb(earlier)) >= Math.abs(EqualiserMoves.gainDb(later));
    StageElement kept = isEarlierLarger ? earlier : later;
    StageElement dropped = isEarlierLarger ? later : earlier;
    List<PlacedEdit> edits =
        new ArrayList<>(Mends.remove(dropped.place().section(), dropped.stage().span()));
    if (edits.isEmpty()) {
      return List.of();
    }
    if (Math.abs(restDb) >= WORTH_KEEPING_DB) {
      String rest = Figures.change(restDb);
      edits.add(Mends.set(kept, "gain", rest));
      return List.of(Edits.changing("Keep one with `" + rest + "`", true, edits));
    }
    List<PlacedEdit> other = Mends.remove(kept.place().section(), kept.stage().span());
    edits.addAll(other);
    return other.isEmpty() ? List.of() : List.of(Edits.changing("Remove both", true, edits));
  }
}
