package chainwright.engine.rules;

import chainwright.dsp.filter.ProgrammeLoudness;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseSearch;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A boost in the bass costs peaks and gives little loudness.
 *
 * <p>Why: limiters will then work on the bass.
 *
 * <p>At fault: {@code bell 50 Hz +6 dB Q 1 on a mix bus}. Not at fault: {@code bell 80 Hz +2 dB Q
 * 1}. How much of the peaks the low notes carry, a recording would tell; here it is the worst case,
 * 60 % of the wave, and the loudness is that of programme noise.
 */
public final class LowBoostEatsHeadroom implements Rule {

  /**
   * The share of a peak that low notes carry at worst. With it +6 dB raise a peak by 4 dB; a
   * recording of a rock band without its guitar rose by 3.7, a mix of electronic music by 2.6.
   */
  private static final double LOW_SHARE = 0.6;

  private static final double LEAST_PEAK_DB = 2.5;
  private static final double LEAST_LOUDNESS_LU = 1;
  private static final double LEAST_GAIN_DB = 1;
  private static final double LOWEST_HZ = 20;
  private static final double HIGHEST_HZ = 120;

  /** Sources whose lowest note is above this have no bass for a boost to raise. */
  private static final double LOW_SOURCE_HZ = 65;

  private static final double TENTH = 0.1;

  /** What changes the balance or the level of the whole and does not react to it. */
  private static final Set<String> LINEAR =
      Set.of("bell", "low-shelf", "high-shelf", "tilt", "high-pass", "low-pass", "gain");

  private static final RuleCard CARD =
      new RuleCard(
          "low-boost-eats-headroom",
          Severity.WARNING,
          "A low boost that eats headroom",
          "Bass energy costs peaks and gives little loudness. Limiters will then work on the bass.",
          List.of("CALC", "CP"));

  /** Makes the rule, which has no state. */
  public LowBoostEatsHeadroom() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    OptionalDouble lowest = evidence.path().lowestHz();
    if (lowest.isEmpty() || lowest.getAsDouble() > LOW_SOURCE_HZ) {
      return;
    }
    Optional<StageElement> strongest =
        EqualiserMoves.of(evidence.path()).stream()
            .filter(move -> EqualiserMoves.gainDb(move) >= LEAST_GAIN_DB)
            .filter(move -> EqualiserMoves.centreHz(move) <= 2 * HIGHEST_HZ)
            .filter(move -> !move.word().equals("high-shelf"))
            .max(Comparator.comparingDouble(EqualiserMoves::gainDb));
    if (strongest.isPresent()) {
      check(evidence, strongest.get(), Math.max(LOWEST_HZ, lowest.getAsDouble()), report);
    }
  }

  private static void check(
      Evidence evidence, StageElement boost, double lowestHz, Consumer<Finding> report) {
    Response whole = response(evidence.path(), Optional.empty());
    ResponseSearch.Extreme most = ResponseSearch.findHighest(whole, lowestHz, HIGHEST_HZ);
    double peakDb = peakDb(most.decibels());
    double loudnessLu = ProgrammeLoudness.changeLu(whole, lowestHz);
    if (peakDb < LEAST_PEAK_DB || loudnessLu >= LEAST_LOUDNESS_LU) {
      return;
    }
    List<Fix> fixes = new ArrayList<>();
    Optional<String> lower = lower(evidence, boost, lowestHz);
    lower.ifPresent(gain -> fixes.add(lowering(boost, gain)));
    trim(evidence, boost, peakDb).ifPresent(fixes::add);
    report.accept(
        evidence.finding(
            CARD,
            Mends.at(boost, "gain"),
            "the low end rises by up to "
                + Figures.change(most.decibels())
                + " at "
                + Figures.hertz(most.hertz())
                + ": where low notes carry the peaks, they rise by "
                + Figures.amount(peakDb)
                + loudness(loudnessLu),
            "Boost less"
                + lower.map(gain -> " (" + gain + ")").orElse("")
                + ", cut the low mids instead, or turn the whole down behind it.",
            List.of(),
            fixes));
  }

  private static String loudness(double changeLu) {
    String amount = Figures.amount(Math.abs(changeLu)).replace("dB", "LU");
    return changeLu < 0
        ? ", while a usual programme gets " + amount + " softer"
        : ", but the loudness of a usual programme only by " + amount;
  }

  /** The response of what stands on the main line, all of it but one stage. */
  private static Response response(SignalPath path, Optional<StageElement> without) {
    List<PathElement> linear = new ArrayList<>();
    for (PathElement element : path.elements()) {
      if (element instanceof StageElement stage
          && LINEAR.contains(stage.word())
          && without.filter(stage::equals).isEmpty()) {
        linear.add(stage);
      }
    }
    return SignalPath.product(linear);
  }

  private static double peakDb(double gainDb) {
    return 20 * Math.log10(1 + LOW_SHARE * (Math.pow(10, gainDb / 20) - 1));
  }

  private static Fix lowering(StageElement boost, String gain) {
    return Edits.changing("Write `" + gain + "`", true, List.of(Mends.set(boost, "gain", gain)));
  }

  /** The boost that is tolerable, in steps of half a decibel. */
  private static Optional<String> lower(Evidence evidence, StageElement boost, double lowestHz) {
    Response others = response(evidence.path(), Optional.of(boost));
    Optional<Response> own = EqualiserMoves.response(boost);
    if (own.isEmpty()) {
      return Optional.empty();
    }
    double gainDb = EqualiserMoves.gainDb(boost);
    for (double newDb = Math.ceil(2 * gainDb) / 2 - 0.5; newDb >= LEAST_GAIN_DB; newDb -= 0.5) {
      // A bell or shelf of less gain has the same shape, scaled in dB, to a tenth.
      double share = newDb / gainDb;
      double most = 0;
      for (double hertz = lowestHz; hertz <= HIGHEST_HZ; hertz++) {
        most =
            Math.max(most, others.decibelsAt(hertz) + share * own.get().decibelsAt(hertz) + TENTH);
      }
      if (peakDb(most) < LEAST_PEAK_DB) {
        return Optional.of(Figures.change(newDb));
      }
    }
    return Optional.empty();
  }

  /** Turns the whole down behind the boost, so that the peaks are where they were. */
  private static Optional<Fix> trim(Evidence evidence, StageElement boost, double peakDb) {
    if (!StageOrder.isMovable(evidence, boost)) {
      return Optional.empty();
    }
    String gain = "gain " + Figures.change(-Math.ceil(2 * peakDb) / 2);
    return StageOrder.lineBelow(boost, gain)
        .map(line -> Edits.changing("Add `" + gain + "`", false, List.of(line)));
  }
}
