package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A chain has more than eight static bands.
 *
 * <p>Why: many bands usually mean that the wrong band came first.
 *
 * <p>At fault: {@code nine bells on one voice}. Not at fault: {@code four bells}.
 */
public final class TooManyBands implements Rule {

  private static final int MOST = 8;
  private static final double SMALL_DB = 1;
  private static final Set<String> BANDS =
      Set.of("bell", "low-shelf", "high-shelf", "tilt", "notch");

  private static final RuleCard CARD =
      new RuleCard(
          "too-many-bands",
          Severity.INFO,
          "Too many bands",
          "Many bands usually mean that the wrong band came first. Each band adds phase"
              + " shift and a place to make mistakes.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public TooManyBands() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> bands =
        evidence.path().stages().stream().filter(stage -> BANDS.contains(stage.word())).toList();
    if (bands.size() <= MOST) {
      return;
    }
    long small =
        bands.stream().filter(band -> Math.abs(EqualiserMoves.gainDb(band)) < SMALL_DB).count();
    StageElement last = bands.get(MOST);
    report.accept(
        evidence.finding(
            CARD,
            Mends.at(last, last.stage().word().span()),
            bands.size() + " static bands stand in this chain, " + small + " of them under 1 dB",
            "Bypass them in pairs and keep those that change more than 1 dB.",
            List.of(),
            List.of()));
  }
}
