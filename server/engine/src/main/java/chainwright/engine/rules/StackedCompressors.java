package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * The stages of a path that turn down what is loud do too much together.
 *
 * <p>Why: ratios multiply.
 *
 * <p>At fault: {@code 6 dB in the chain and 5 dB on the bus}. Not at fault: {@code 2 dB fast and
 * 2.5 dB slow}.
 */
public final class StackedCompressors implements Rule {

  private static final double LARGE_DB = 8;
  private static final double VERY_LARGE_DB = 12;
  private static final double HARD_DB = 3;
  private static final double NEAR_RATIO = 2;

  private static final RuleCard CARD =
      new RuleCard(
          "stacked-compressors",
          Severity.INFO,
          "Stacked compressors",
          "Ratios multiply and make-ups add noise. Two stages help when one is fast and"
              + " light and the other slow and light.",
          List.of("SEN", "CP"));

  /** Makes the rule, which has no state. */
  public StackedCompressors() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> own = Reductions.expected(evidence.path());
    List<StageElement> all = new ArrayList<>(own);
    evidence.busesAfter().forEach(bus -> all.addAll(Reductions.expected(bus)));
    if (own.isEmpty() || all.size() < 2) {
      return;
    }
    double sumDb = Reductions.sumDb(all);
    if (sumDb >= LARGE_DB || areAlike(all)) {
      report.accept(finding(evidence, own, all, sumDb));
    }
  }

  /** Asks whether two of them work hard and at about the same speed. */
  private static boolean areAlike(List<StageElement> all) {
    for (int i = 1; i < all.size(); i++) {
      for (int k = 0; k < i; k++) {
        boolean isHard =
            Math.min(Reductions.ofDb(all.get(i)), Reductions.ofDb(all.get(k))) > HARD_DB;
        if (isHard
            && isNear(all.get(i), all.get(k), "attack")
            && isNear(all.get(i), all.get(k), "release")) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean isNear(StageElement one, StageElement other, String setting) {
    double first = one.stage().settings().number(setting).orElse(0.0);
    double second = other.stage().settings().number(setting).orElse(0.0);
    return first > 0 && second > 0 && Math.max(first / second, second / first) <= NEAR_RATIO;
  }

  private static Finding finding(
      Evidence evidence, List<StageElement> own, List<StageElement> all, double sumDb) {
    StageElement last = own.get(own.size() - 1);
    List<Finding.Related> related = new ArrayList<>();
    for (StageElement element : all) {
      if (!element.equals(last)) {
        related.add(
            new Finding.Related(
                Mends.at(element, "expected-reduction"),
                "this takes " + Figures.amount(Reductions.ofDb(element))));
      }
    }
    return evidence.finding(
        CARD,
        sumDb >= VERY_LARGE_DB ? Severity.WARNING : CARD.severity(),
        Mends.at(last, "expected-reduction"),
        all.size()
            + " stages together are expected to turn the sound down by up to "
            + Figures.amount(sumDb),
        "Split the work: about 2 dB fast for the peaks, about 3 dB slow for the level.",
        related,
        List.of());
  }
}
