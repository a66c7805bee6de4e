package chainwright.engine.rules;

import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseSearch;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Settings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * All moves together raise a region by 9 dB or more.
 *
 * <p>Why: noise is lifted, and thresholds and converters are pushed.
 *
 * <p>At fault: {@code three boosts around 10 kHz that add up to 13 dB}. Not at fault: {@code +5 dB,
 * and a closer microphone chosen}.
 */
public final class LargeTotalBoost implements Rule {

  private static final double LARGE_DB = 9;
  private static final double TOLERABLE_DB = 8.5;
  private static final double OWN_DB = 2;
  private static final double LOWEST_HZ = 20;
  private static final double HIGHEST_HZ = 20_000;

  private static final RuleCard CARD =
      new RuleCard(
          "large-total-boost",
          Severity.WARNING,
          "A very large total boost",
          "A very large boost means that the microphone did not catch it, or that noise"
              + " is lifted. It also pushes the next threshold and converter by the same"
              + " amount.",
          List.of("CP", "KATZ"));

  /** Makes the rule, which has no state. */
  public LargeTotalBoost() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> own = EqualiserMoves.of(evidence.path());
    List<PathElement> all = new ArrayList<>(own);
    evidence.busesAfter().forEach(bus -> all.addAll(EqualiserMoves.of(bus)));
    double highestHz = Math.min(HIGHEST_HZ, evidence.path().rate().nyquist().hertz());
    Response product = SignalPath.product(all);
    if (own.isEmpty() || product.boundDecibels() < LARGE_DB) {
      return;
    }
    ResponseSearch.Extreme most = ResponseSearch.findHighest(product, LOWEST_HZ, highestHz);
    Optional<StageElement> strongest =
        own.stream()
            .max(Comparator.comparingDouble(one -> EqualiserMoves.decibelsAt(one, most.hertz())));
    boolean isOwn =
        strongest.isPresent() && EqualiserMoves.decibelsAt(strongest.get(), most.hertz()) >= OWN_DB;
    if (most.decibels() >= LARGE_DB && isOwn) {
      report.accept(finding(evidence, strongest.get(), all, most));
    }
  }

  private static Finding finding(
      Evidence evidence,
      StageElement strongest,
      List<PathElement> all,
      ResponseSearch.Extreme most) {
    List<Finding.Related> related = new ArrayList<>();
    for (PathElement element : all) {
      if (element instanceof StageElement stage && !stage.equals(strongest)) {
        double partDb = EqualiserMoves.decibelsAt(stage, most.hertz());
        if (partDb >= 1) {
          related.add(
              new Finding.Related(Mends.at(stage, "gain"), "this adds " + Figures.amount(partDb)));
        }
      }
    }
    return evidence.finding(
        CARD,
        Mends.at(strongest, "gain"),
        "the moves add up to "
            + Figures.change(most.decibels())
            + " at "
            + Figures.hertz(most.hertz()),
        "Look for the missing energy first, such as another place for the microphone; else lower the"
            + " boosts"
            + tolerable(evidence, strongest, most).map(lower -> ", this one to " + lower).orElse("")
            + ".",
        related,
        tolerable(evidence, strongest, most).stream()
            .map(
                lower ->
                    Edits.changing(
                        "Write `" + lower + "`",
                        true,
                        List.of(Mends.set(strongest, "gain", lower))))
            .toList());
  }

  /**
   * The gain of the strongest boost with which the sum is tolerable, and which is usual by itself;
   * none if no boost would be left.
   */
  private static Optional<String> tolerable(
      Evidence evidence, StageElement strongest, ResponseSearch.Extreme most) {
    double partDb = EqualiserMoves.decibelsAt(strongest, most.hertz());
    double tooMuchDb = most.decibels() - TOLERABLE_DB;
    double gainDb = EqualiserMoves.gainDb(strongest);
    double newDb = Math.floor(10 * gainDb * (1 - tooMuchDb / partDb)) / 10;
    Settings settings = strongest.stage().settings();
    double usualDb =
        settings
            .kind()
            .setting("gain")
            .flatMap(gain -> settings.range(gain, evidence.path().source()))
            .map(TradeRange::usualHigh)
            .orElse(newDb);
    double lowerDb = Math.min(newDb, usualDb);
    return lowerDb <= 0 ? Optional.empty() : Optional.of(Figures.change(lowerDb));
  }
}
