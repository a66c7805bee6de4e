package chainwright.engine.rules;

import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseSearch;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.quantity.NumberText;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A bell takes away a wide region so deeply that the body goes.
 *
 * <p>Why: A wide deep hole removes the body, not the fault.
 *
 * <p>At fault: {@code bell 300 Hz -10 dB Q 0.6}. Not at fault: {@code bell 300 Hz -3 dB Q 1.4}.
 */
public final class WideDeepCut implements Rule {

  private static final double DEEP_DB = -8;
  private static final double SHALLOW_DB = -6;
  private static final double NARROWEST_Q = 1;
  private static final double LOWEST_HZ = 10;
  private static final double HIGHEST_HZ = 20_000;

  private static final RuleCard CARD =
      new RuleCard(
          "wide-deep-cut",
          Severity.INFO,
          "A wide and deep cut",
          "A wide deep hole removes the body, not the fault. A deep cut wider than an"
              + " octave is a change of instrument, not a repair.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public WideDeepCut() {}

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

  /** Asks whether a stage is such a cut, so that other rules need not speak of its gain. */
  static boolean isAtFault(StageElement element) {
    return element.word().equals("bell")
        && EqualiserMoves.gainDb(element) <= DEEP_DB
        && element.stage().settings().number("Q").orElse(1.0) < NARROWEST_Q;
  }

  private static Finding finding(Evidence evidence, StageElement element) {
    double gainDb = EqualiserMoves.gainDb(element);
    String shallower = Figures.change(Math.max(gainDb / 2, SHALLOW_DB));
    Fix narrow = narrow(evidence, element);
    Fix halve =
        Edits.changing(
            "Write `" + shallower + "`", false, List.of(Mends.set(element, "gain", shallower)));
    return evidence.finding(
        CARD,
        Mends.at(element, "gain"),
        "a cut of "
            + Figures.amount(-gainDb)
            + " with Q "
            + NumberText.format(element.context().number("Q"))
            + reach(element, gainDb)
            + ": the body of "
            + evidence.sourceInWords()
            + " goes with it",
        "Narrow it to a Q of 2 to 4, or make it shallower: `" + shallower + "`.",
        List.of(),
        List.of(narrow, halve));
  }

  /** Narrows the cut; one of extreme depth is also brought back to a usual one. */
  private static Fix narrow(Evidence evidence, StageElement element) {
    PlacedEdit narrower = Mends.set(element, "Q", "2");
    return element
        .stage()
        .settings()
        .written("gain")
        .flatMap(gain -> element.stage().settings().range(gain.setting(), evidence.path().source()))
        .filter(
            range -> range.verdict(EqualiserMoves.gainDb(element)) == TradeRange.Verdict.EXTREME)
        .map(range -> Figures.change(range.usualLow()))
        .map(
            gain ->
                Edits.changing(
                    "Write `" + gain + "` and `Q 2`",
                    true,
                    List.of(Mends.set(element, "gain", gain), narrower)))
        .orElseGet(() -> Edits.changing("Write `Q 2`", true, List.of(narrower)));
  }

  /** Says how far the cut reaches, from the response; nothing if it cannot be designed. */
  private static String reach(StageElement element, double gainDb) {
    Optional<Response> response = EqualiserMoves.response(element);
    double centreHz = EqualiserMoves.centreHz(element);
    if (response.isEmpty() || centreHz <= LOWEST_HZ || centreHz >= HIGHEST_HZ) {
      return "";
    }
    List<Double> below = edges(response.get(), gainDb / 2, LOWEST_HZ, centreHz);
    List<Double> above = edges(response.get(), gainDb / 2, centreHz, HIGHEST_HZ);
    if (below.isEmpty() || above.isEmpty()) {
      return "";
    }
    return " takes half of that or more from "
        + Figures.hertz(below.get(below.size() - 1))
        + " to "
        + Figures.hertz(above.get(0));
  }

  private static List<Double> edges(
      Response response, double levelDb, double lowHz, double highHz) {
    return ResponseSearch.findCrossings(response, levelDb, lowHz, highHz);
  }
}
