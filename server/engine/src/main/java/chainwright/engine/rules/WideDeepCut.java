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
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
  private static final String NARROW_Q = "2";

  /** Sources whose box sound is wide, so that such a cut is often right; common practice. */
  private static final Set<String> DRUMS =
      Set.of("kick", "snare", "toms", "overheads", "percussion", "drum-bus");

  private static final double LOWEST_HZ = 10;
  private static final double HIGHEST_HZ = 20_000;

  private static final RuleCard CARD =
      new RuleCard(
          "wide-deep-cut",
          Severity.WARNING,
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

  private static boolean isDrum(Evidence evidence) {
    return evidence.path().source().filter(kind -> DRUMS.contains(kind.word())).isPresent();
  }

  private static Finding finding(Evidence evidence, StageElement element) {
    double gainDb = EqualiserMoves.gainDb(element);
    Fix narrow = narrow(evidence, element);
    Fix halve = halve(evidence, element);
    return evidence.finding(
        CARD,
        isDrum(evidence) ? Severity.INFO : CARD.severity(),
        Mends.at(element, "gain"),
        "a cut of "
            + Figures.amount(-gainDb)
            + " with Q "
            + NumberText.format(element.context().number("Q"))
            + reach(element, gainDb)
            + ": the body of "
            + evidence.sourceInWords()
            + " goes with it",
        narrow.title()
            + " to keep the repair without the hole, or make it shallower: "
            + halve.title().replaceFirst("Write ", "")
            + ".",
        List.of(),
        List.of(narrow, halve));
  }

  /** Narrows the cut; one that is deeper than usual is also made shallower. */
  private static Fix narrow(Evidence evidence, StageElement element) {
    List<PlacedEdit> edits = new ArrayList<>();
    List<String> words = new ArrayList<>();
    usualLow(evidence, element, "gain", EqualiserMoves.gainDb(element))
        .map(Figures::change)
        .ifPresent(gain -> write(element, "gain", gain, words, edits));
    write(element, "Q", NARROW_Q, words, edits);
    return Edits.changing("Write " + String.join(" and ", words), true, edits);
  }

  /** Makes the cut shallower; one that is wider than usual is also made a little narrower. */
  private static Fix halve(Evidence evidence, StageElement element) {
    List<PlacedEdit> edits = new ArrayList<>();
    List<String> words = new ArrayList<>();
    double halfDb = Math.max(EqualiserMoves.gainDb(element) / 2, SHALLOW_DB);
    write(element, "gain", Figures.change(halfDb), words, edits);
    usualLow(evidence, element, "Q", element.context().number("Q"))
        .map(NumberText::format)
        .ifPresent(quality -> write(element, "Q", quality, words, edits));
    return Edits.changing("Write " + String.join(" and ", words), false, edits);
  }

  private static void write(
      StageElement element,
      String setting,
      String value,
      List<String> words,
      List<PlacedEdit> edits) {
    words.add("`" + (setting.equals("Q") ? "Q " : "") + value + "`");
    edits.add(Mends.set(element, setting, value));
  }

  /** The lower end of what is usual for a setting; empty if the value is usual or not known. */
  private static Optional<Double> usualLow(
      Evidence evidence, StageElement element, String setting, double value) {
    return element
        .stage()
        .kind()
        .setting(setting)
        .flatMap(one -> element.stage().settings().range(one, evidence.path().source()))
        .filter(range -> range.verdict(value) != TradeRange.Verdict.USUAL)
        .map(TradeRange::usualLow);
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
        + Figures.band(below.get(below.size() - 1), above.get(0));
  }

  private static List<Double> edges(
      Response response, double levelDb, double lowHz, double highHz) {
    return ResponseSearch.findCrossings(response, levelDb, lowHz, highHz);
  }
}
