package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.function.Consumer;

/**
 * A gate or an expander has to decide on a signal that is compressed already.
 *
 * <p>Why: compression brings spill and noise nearer to the wanted sound.
 *
 * <p>At fault: {@code compressor}, then {@code gate}. Not at fault: the gate first, a gate with a
 * {@code key}, a compressor whose {@code expected-reduction} is below 3 dB. Without that setting
 * the reduction is assumed to be more.
 */
public final class GateAfterCompressor implements Rule {

  private static final double REDUCTION_DB = 3;

  private static final RuleCard CARD =
      new RuleCard(
          "gate-after-compressor",
          Severity.WARNING,
          "A gate behind the compressor",
          "Compression brings spill and noise nearer to the wanted sound, so the gate has less"
              + " difference to decide on. Thresholds become touchy.",
          List.of("IZH", "CP"));

  /** Makes the rule, which has no state. */
  public GateAfterCompressor() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    StageElement compressor = null;
    for (StageElement element : StageOrder.placed(evidence)) {
      boolean compresses =
          element.word().equals("compressor")
              && isReductionKnown(element)
              && element.context().number("expected-reduction", REDUCTION_DB) >= REDUCTION_DB;
      compressor = compressor == null && compresses ? element : compressor;
      boolean hasKey = StageOrder.mayBeWritten(element, "key");
      if (compressor != null && StageOrder.isGating(element) && !hasKey) {
        report.accept(finding(evidence, compressor, element));
      }
    }
  }

  /** Whether the reduction that is expected could be read, or none is. */
  private static boolean isReductionKnown(StageElement compressor) {
    return !StageOrder.mayBeWritten(compressor, "expected-reduction")
        || compressor.stage().settings().number("expected-reduction").isPresent();
  }

  private static Finding finding(Evidence evidence, StageElement compressor, StageElement gate) {
    boolean isExpected = compressor.stage().settings().written("expected-reduction").isPresent();
    String reduction =
        isExpected
            ? "an expected reduction of " + compressor.context().decibels("expected-reduction")
            : "a reduction of 3 dB or more, as assumed without an `expected-reduction`,";
    return evidence.finding(
        CARD,
        StageOrder.at(gate),
        "The "
            + gate.word()
            + " stands behind a compressor: after "
            + reduction
            + " spill and noise lie that much nearer to "
            + evidence.sourceInWords(),
        "Move the `" + gate.word() + "` line above the `compressor` line, or key it from before.",
        List.of(StageOrder.related(compressor, "the compressor that narrows the difference")),
        StageOrder.moveBefore(
            evidence, "Move `" + gate.word() + "` before `compressor`", List.of(gate), compressor));
  }
}
