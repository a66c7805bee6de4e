package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Step;
import java.util.List;
import java.util.function.Consumer;

/**
 * A compressor hears the rumble that the high-pass behind it takes away.
 *
 * <p>Why: rumble that nobody hears turns the whole sound down.
 *
 * <p>At fault: {@code compressor}, then {@code high-pass}. Not at fault: the high-pass first, or
 * one in the compressor's {@code side-chain}. How much reduction the rumble costs, only a recording
 * tells; that there is any is assumed from the high-pass.
 */
public final class RumbleWorksTheDetector implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "rumble-works-the-detector",
          Severity.INFO,
          "Rumble that works the compressor",
          "Rumble that nobody hears turns the whole sound down. Removing it first makes the same"
              + " threshold honest.",
          List.of("IZH", "CP"));

  /** Makes the rule, which has no state. */
  public RumbleWorksTheDetector() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    StageElement compressor = null;
    for (StageElement element : StageOrder.placed(evidence)) {
      if (element.word().equals("high-pass")) {
        if (compressor != null) {
          report.accept(finding(evidence, compressor, element));
        }
        return;
      }
      boolean hearsRumble = element.word().equals("compressor") && !hasOwnEar(element);
      compressor = compressor == null && hearsRumble ? element : compressor;
    }
  }

  /** Whether its detector hears something else, or the same without the lows. */
  private static boolean hasOwnEar(StageElement compressor) {
    return StageOrder.mayBeWritten(compressor, "key")
        || compressor.stage().sideChain().stream()
            .anyMatch(
                step ->
                    step instanceof Step.Stage stage && stage.kind().word().equals("high-pass"));
  }

  private static Finding finding(
      Evidence evidence, StageElement compressor, StageElement highPass) {
    return evidence.finding(
        CARD,
        StageOrder.at(highPass),
        "The compressor still hears what lies below "
            + highPass
                .stage()
                .settings()
                .value("cutoff")
                .map(Object::toString)
                .orElse("the cutoff of this high-pass")
            + "; how much reduction that costs, only a recording tells",
        "Move the `high-pass` above the compressor, or add one to its `side-chain`.",
        List.of(StageOrder.related(compressor, "hears the rumble")),
        StageOrder.moveBefore(
            evidence, "Move `high-pass` before `compressor`", List.of(highPass), compressor));
  }
}
