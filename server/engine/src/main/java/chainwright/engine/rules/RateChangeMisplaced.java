package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.RateChanges;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Declarations;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The sample rate changes where it cannot.
 *
 * <p>Why: sounds that are added or compared have one rate.
 *
 * <p>At fault: a {@code sample-rate-conversion} inside {@code parallel}, one in a chain that goes
 * to a bus, one before a stage with {@code key}. Not at fault: one at the end of the last bus.
 */
public final class RateChangeMisplaced implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "rate-change-misplaced",
          Severity.ERROR,
          "A change of the sample rate where everything must keep one",
          "Sounds that are added, or of which one listens to another, have one rate: between the"
              + " samples of different rates there is nothing to add.",
          List.of("DESIGN"));

  /** Makes the rule, which has no state. */
  public RateChangeMisplaced() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (StageElement change : RateChanges.enclosed(evidence.path())) {
      report.accept(
          finding(
              evidence,
              change,
              "The sample rate changes for a part of the signal",
              "Move it out of the block, to the end of the chain, or render with `--rate`.",
              List.of()));
    }
    Optional<String> bus = bus(evidence.track().declarations());
    if (bus.isPresent()) {
      for (StageElement change : RateChanges.effective(evidence.path())) {
        report.accept(
            finding(
                evidence,
                change,
                "The sample rate changes in `"
                    + evidence.track().name().text()
                    + "`, which goes to `"
                    + bus.get()
                    + "`",
                "Convert at the end of the last bus, or render with `--rate`.",
                List.of()));
      }
    } else {
      for (RateChanges.Keyed keyed : RateChanges.keyed(evidence.path())) {
        report.accept(
            finding(
                evidence,
                keyed.change(),
                "Behind this change of the sample rate, `"
                    + keyed.listener().word()
                    + "` listens to `"
                    + keyed.key()
                    + "`, which has the rate before it",
                "Move the conversion behind the stages with a `key`.",
                List.of(StageOrder.related(keyed.listener(), "listens at the other rate"))));
      }
    }
  }

  /** The first bus that the track goes to. */
  private static Optional<String> bus(Declarations declarations) {
    if (!declarations.routes().isEmpty()) {
      return Optional.of(declarations.routes().get(0).bus().text());
    }
    return declarations.sends().isEmpty()
        ? Optional.empty()
        : Optional.of(declarations.sends().get(0).bus().text());
  }

  private static Finding finding(
      Evidence evidence,
      StageElement change,
      String what,
      String remedy,
      List<Finding.Related> related) {
    return evidence.finding(
        CARD,
        StageOrder.at(change),
        what,
        remedy,
        related,
        StageOrder.remove(evidence, "Remove this conversion", change));
  }
}
