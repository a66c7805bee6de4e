package chainwright.engine.rules;

import chainwright.dsp.filter.ResponseSearch;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Two or more high-passes on the way, buses included, add up to more than is written.
 *
 * <p>Why: two filters add their slopes and shift the real corner upwards.
 *
 * <p>At fault: {@code high-pass 80 Hz} in the chain and again on its bus. Not at fault: a 25 Hz
 * filter on the bus; two sections that make one filter of higher order. From 30 dB/oct on the sum
 * is steeper than any single filter that is not remarked on as steep; that limit is common
 * practice, no source.
 */
public final class StackedHighPasses implements Rule {

  private static final double SHIFT = 1.15;
  private static final double STEEP_DB_PER_OCTAVE = 30;
  private static final double SEARCH_BEGINS = 0.25;
  private static final double SEARCH_ENDS = 8;

  private static final RuleCard CARD =
      new RuleCard(
          "stacked-high-passes",
          Severity.WARNING,
          "High-passes that add up",
          "Two filters add their slopes and shift the real corner upwards. What was written twice"
              + " as \"12 dB/oct at 80 Hz\" is 24 dB/oct with −6 dB at 80 Hz.",
          List.of("CALC"));

  /** Several filters taken as one. */
  private record Stack(double highestHz, double cornerHz, double slopeDbPerOctave, int count) {

    static Stack of(List<StageElement> filters, double nyquistHz) {
      double highestHz = HighPasses.highestCutoffHz(filters);
      double slope = HighPasses.slopeDbPerOctave(HighPasses.atHighestCutoff(filters));
      double endHz = Math.min(highestHz * SEARCH_ENDS, nyquistHz);
      List<Double> corners =
          filters.isEmpty()
              ? List.of()
              : ResponseSearch.findCrossings(
                  HighPasses.response(filters),
                  ResponseSearch.HALF_POWER_DB,
                  highestHz * SEARCH_BEGINS,
                  endHz);
      double cornerHz = corners.isEmpty() ? highestHz : corners.get(corners.size() - 1);
      return new Stack(highestHz, cornerHz, slope, filters.size());
    }

    boolean isAtFault() {
      return count > 1
          && (cornerHz >= SHIFT * highestHz || slopeDbPerOctave >= STEEP_DB_PER_OCTAVE);
    }
  }

  /** Makes the rule, which has no state. */
  public StackedHighPasses() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> own = HighPasses.of(evidence.path());
    if (own.isEmpty()) {
      return;
    }
    List<StageElement> all = new ArrayList<>(own);
    for (SignalPath bus : evidence.busesAfter()) {
      all.addAll(HighPasses.of(bus));
    }
    if (all.size() < 2) {
      return;
    }
    double nyquistHz = evidence.path().rate().hertz() / 2;
    Stack stack = Stack.of(all, nyquistHz);
    if (stack.isAtFault()) {
      StageElement last = own.get(own.size() - 1);
      boolean clears = !Stack.of(HighPasses.without(all, last), nyquistHz).isAtFault();
      report.accept(finding(evidence, stack, all, last, clears));
    }
  }

  private static Finding finding(
      Evidence evidence, Stack stack, List<StageElement> all, StageElement last, boolean clears) {
    List<Finding.Related> others =
        HighPasses.without(all, last).stream()
            .map(one -> StageOrder.related(one, "the same signal passes this one too"))
            .toList();
    List<Fix> fixes =
        clears ? StageOrder.remove(evidence, "Remove this `high-pass`", last) : List.of();
    return evidence.finding(
        CARD,
        StageOrder.at(last),
        all.size()
            + " high-passes on the way make one with -3 dB at "
            + Figures.hertz(stack.cornerHz())
            + " and "
            + Math.round(stack.slopeDbPerOctave())
            + " dB/oct, where the highest cutoff written is "
            + Figures.hertz(stack.highestHz()),
        "Delete one, or lower both corners.",
        others,
        fixes);
  }
}
