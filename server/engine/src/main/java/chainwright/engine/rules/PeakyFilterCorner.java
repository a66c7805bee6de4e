package chainwright.engine.rules;

import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseSearch;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageSound;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A pass filter lifts its own corner.
 *
 * <p>Why: a resonant corner is a hidden boost.
 *
 * <p>At fault: {@code high-pass 45 Hz Q 2}. Not at fault: Q 0.7 with a bell of its own for the
 * weight; a Q up to 1.
 */
public final class PeakyFilterCorner implements Rule {

  private static final double QUALITY = 1;
  private static final double LIFT_DB = 1;
  private static final double AROUND = 4;
  private static final double HIGHEST_SHARE_OF_RATE = 0.49;
  private static final Set<String> WORDS = Set.of("high-pass", "low-pass");

  private static final RuleCard CARD =
      new RuleCard(
          "peaky-filter-corner",
          Severity.INFO,
          "A corner that is a hidden boost",
          "A resonant corner is a hidden boost. It adds ring exactly where the sound ends.",
          List.of("CALC", "CP"));

  /** Makes the rule, which has no state. */
  public PeakyFilterCorner() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (StageElement element : evidence.path().stages()) {
      double highestHz = HIGHEST_SHARE_OF_RATE * element.rate().hertz();
      Optional<Response> response = element.sound().map(StageSound::response);
      boolean isPeaky =
          WORDS.contains(element.word())
              && element.context().number("Q", QUALITY) > QUALITY
              && element.context().number("cutoff", 0) > 0;
      if (isPeaky && response.isPresent()) {
        double cutoffHz = HighPasses.cutoffHz(element);
        ResponseSearch.Extreme peak =
            ResponseSearch.findHighest(
                response.get(), cutoffHz / AROUND, Math.min(cutoffHz * AROUND, highestHz));
        if (peak.decibels() > LIFT_DB) {
          report.accept(finding(evidence, element, peak));
        }
      }
    }
  }

  private static Finding finding(
      Evidence evidence, StageElement element, ResponseSearch.Extreme peak) {
    return evidence.finding(
        CARD,
        StageOrder.at(element, "Q"),
        "The corner lifts "
            + Figures.hertz(peak.hertz())
            + " by "
            + Figures.amount(peak.decibels()),
        "Set Q to 0.7, or write the boost as its own bell so that readers see it.",
        List.of(),
        StageOrder.write(evidence, element, "Q", "0.7", true));
  }
}
