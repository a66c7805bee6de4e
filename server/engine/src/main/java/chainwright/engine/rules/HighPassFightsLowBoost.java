package chainwright.engine.rules;

import chainwright.dsp.filter.ResponseProduct;
import chainwright.dsp.filter.ResponseSearch;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageSound;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * A high-pass and a boost of the lows lie within an octave of each other.
 *
 * <p>Why: one takes what the other gives.
 *
 * <p>At fault: {@code high-pass 90 Hz} with {@code low-shelf 110 Hz +5 dB}. Not at fault: {@code
 * high-pass 40 Hz} with the same shelf; a high-pass that takes less than 0.5 dB where the boost
 * gives most. The boosts looked at are those of shelves and bells by 1 dB or more. Both limits are
 * common practice, no source.
 */
public final class HighPassFightsLowBoost implements Rule {

  private static final double OCTAVE = 2;
  private static final double BOOST_DB = 1;
  private static final double LEAST_LOSS_DB = 0.5;
  private static final double CLEAR_OF_OCTAVE = 2.1;
  private static final double LOWEST_HZ = 10;
  private static final double HIGHEST_HZ = 1000;
  private static final Map<String, String> PLACES = Map.of("low-shelf", "cutoff", "bell", "centre");

  private static final RuleCard CARD =
      new RuleCard(
          "high-pass-fights-low-boost",
          Severity.INFO,
          "A high-pass against a low boost",
          "One takes what the other gives; the result is a narrow bump and extra phase. Readers of"
              + " two opposing lines cannot see the combined curve.",
          List.of("CALC", "CP"));

  /** Makes the rule, which has no state. */
  public HighPassFightsLowBoost() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> filters = HighPasses.of(evidence.path());
    for (StageElement boost : StageOrder.mainLine(evidence)) {
      boolean isBoost =
          PLACES.containsKey(boost.word())
              && boost.context().number("gain", 0) >= BOOST_DB
              && boost.sound().isPresent();
      if (isBoost) {
        filters.stream()
            .filter(filter -> isNear(HighPasses.cutoffHz(filter), hertz(boost)))
            .filter(filter -> lossDb(filter, boost) >= LEAST_LOSS_DB)
            .findFirst()
            .ifPresent(filter -> report.accept(finding(evidence, filter, boost)));
      }
    }
  }

  private static double hertz(StageElement boost) {
    return boost.context().number(PLACES.getOrDefault(boost.word(), "cutoff"));
  }

  private static boolean isNear(double cutoffHz, double boostHz) {
    return boostHz <= cutoffHz * OCTAVE && boostHz >= cutoffHz / OCTAVE;
  }

  private static double lossDb(StageElement filter, StageElement boost) {
    return -EqualiserMoves.decibelsAt(filter, EqualiserMoves.strongestHz(boost));
  }

  private static Finding finding(Evidence evidence, StageElement filter, StageElement boost) {
    ResponseSearch.Extreme peak =
        ResponseSearch.findHighest(
            new ResponseProduct(
                List.of(
                    filter.sound().map(StageSound::response).orElseThrow(),
                    boost.sound().map(StageSound::response).orElseThrow())),
            LOWEST_HZ,
            HIGHEST_HZ);
    double lowerHz = Math.floor(hertz(boost) / CLEAR_OF_OCTAVE);
    List<Fix> fixes = StageOrder.write(evidence, filter, "cutoff", Figures.hertz(lowerHz), false);
    return evidence.finding(
        CARD,
        StageOrder.at(boost, "gain"),
        "The high-pass at "
            + Figures.hertz(HighPasses.cutoffHz(filter))
            + " and this "
            + Figures.change(boost.context().number("gain"))
            + " at "
            + Figures.hertz(hertz(boost))
            + " make a bump of "
            + Figures.change(peak.decibels())
            + " at "
            + Figures.hertz(peak.hertz()),
        "Keep it only if this curve is wanted; else lower the high-pass to "
            + Figures.hertz(lowerHz)
            + ".",
        List.of(StageOrder.related(filter, "takes what the boost gives")),
        fixes);
  }
}
