package chainwright.engine.rules;

import chainwright.dsp.filter.FrequencyGrid;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Value;
import chainwright.quantity.Decibels;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What follows the last de-esser lifts its band again.
 *
 * <p>Why: a later boost in the same band gives back what the de-esser took.
 *
 * <p>At fault: {@code de-ess}, then {@code high-shelf 6 kHz +5 dB}. Not at fault: the shelf first,
 * or a lift of the air above the esses. The mean is that of the responses in dB over the band, by
 * octaves, at 48 points.
 */
public final class BrightBoostAfterDeEss implements Rule {

  private static final double BOOST_DB = 2;
  private static final int POINTS = 48;

  private static final RuleCard CARD =
      new RuleCard(
          "bright-boost-after-de-ess",
          Severity.WARNING,
          "A bright boost behind the de-esser",
          "A later boost in the same band gives back what the de-esser took. The listener gets the"
              + " cost of both and the benefit of neither.",
          List.of("SEN", "CP", "CALC"));

  /** One stage and its mean gain in the band. */
  private record Lift(StageElement element, double gainDb) {}

  /** Makes the rule, which has no state. */
  public BrightBoostAfterDeEss() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> line = StageOrder.placed(evidence);
    StageElement deEsser = null;
    List<StageElement> later = new ArrayList<>();
    for (StageElement element : line) {
      if (element.word().equals("de-ess")) {
        deEsser = element;
        later.clear();
      } else if (element.sound().isPresent()) {
        later.add(element);
      }
    }
    Optional<Value.Span> band = deEsser == null ? Optional.empty() : band(deEsser);
    if (deEsser == null || band.isEmpty() || boundDb(later) < BOOST_DB) {
      return;
    }
    double[] grid =
        FrequencyGrid.logarithmic(
                band.get().low().baseValue(), band.get().high().baseValue(), POINTS)
            .toHertz();
    if (mostDb(later, grid) < BOOST_DB) {
      return;
    }
    List<Lift> after = new ArrayList<>();
    double sumDb = 0;
    for (StageElement element : later) {
      Lift lift = lift(element, element.sound().orElseThrow().response(), grid);
      after.add(lift);
      sumDb += lift.gainDb();
    }
    if (sumDb >= BOOST_DB) {
      report.accept(finding(evidence, deEsser, band.get(), after, sumDb));
    }
  }

  private static Optional<Value.Span> band(StageElement deEsser) {
    return deEsser.stage().settings().value("band").orElse(null) instanceof Value.Span band
        ? Optional.of(band)
        : Optional.empty();
  }

  private static double boundDb(List<StageElement> elements) {
    double sumDb = 0;
    for (StageElement element : elements) {
      sumDb += element.sound().orElseThrow().response().boundDecibels();
    }
    return sumDb;
  }

  /** What the sum of the mean gains is at most, told without designing the filters. */
  private static double mostDb(List<StageElement> elements, double[] grid) {
    double sumDb = 0;
    for (StageElement element : elements) {
      sumDb += element.sound().orElseThrow().response().estimateMean(grid).mostDb();
    }
    return sumDb;
  }

  private static Lift lift(StageElement element, Response response, double[] grid) {
    double sumDb = 0;
    for (double decibels : response.toDecibels(grid)) {
      sumDb += decibels;
    }
    return new Lift(element, sumDb / POINTS);
  }

  private static Finding finding(
      Evidence evidence, StageElement deEsser, Value.Span band, List<Lift> after, double sumDb) {
    List<Lift> strongest =
        after.stream().sorted(Comparator.comparingDouble(Lift::gainDb).reversed()).toList();
    List<StageElement> moved = new ArrayList<>();
    double restDb = sumDb;
    for (Lift lift : strongest) {
      if (restDb >= BOOST_DB) {
        moved.add(lift.element());
        restDb -= lift.gainDb();
      }
    }
    List<StageElement> inOrder = after.stream().map(Lift::element).filter(moved::contains).toList();
    StageElement first = strongest.get(0).element();
    String them = inOrder.size() > 1 ? "the boosts" : "`" + first.word() + "`";
    return evidence.finding(
        CARD,
        StageOrder.at(first, "gain"),
        "What follows the de-esser lifts its band, "
            + band
            + ", by "
            + decibels(sumDb)
            + " on average"
            + deEsser
                .stage()
                .settings()
                .number("max-reduction")
                .map(most -> ", where it takes at most " + Figures.amount(most) + " from the esses")
                .orElse(""),
        "Move the boost above the de-esser, lower it, or add a de-esser behind it.",
        List.of(StageOrder.related(deEsser, "the de-esser whose work it gives back")),
        StageOrder.moveBefore(evidence, "Move " + them + " before `de-ess`", inOrder, deEsser));
  }

  private static String decibels(double gainDb) {
    return new Decibels(Math.round(gainDb * 10) / 10.0).toString();
  }
}
