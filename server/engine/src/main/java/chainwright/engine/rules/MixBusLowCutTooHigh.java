package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.function.Consumer;

/**
 * The high-passes of the mix bus take 1 dB or more at 40 Hz.
 *
 * <p>Why: a filter on everything turns the phase of kick and bass.
 *
 * <p>At fault: {@code high-pass 45 Hz 24 dB/oct} in {@code bus mix}. Not at fault: {@code 22 Hz 12
 * dB/oct}. Whether the mix has anything at 40 Hz, only a recording tells; it is assumed.
 */
public final class MixBusLowCutTooHigh implements Rule {

  private static final double PROBE_HZ = 40;
  private static final double LOSS_DB = 1;
  private static final String LOW_CUTOFF = "20 Hz";
  private static final String MIX = "mix";

  private static final RuleCard CARD =
      new RuleCard(
          "mix-bus-low-cut-too-high",
          Severity.WARNING,
          "A low cut on the mix that is too high",
          "A filter on everything turns the phase of kick and bass and takes weight from the whole"
              + " record. Problems of single channels are cheaper to solve where they arise.",
          List.of("CALC", "CP"));

  /** Makes the rule, which has no state. */
  public MixBusLowCutTooHigh() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    boolean isMix = evidence.track().isBus() && evidence.track().name().text().equals(MIX);
    if (!isMix) {
      return;
    }
    List<StageElement> filters = HighPasses.of(evidence.path());
    double lossDb = HighPasses.lossDb(filters, PROBE_HZ);
    if (lossDb < LOSS_DB) {
      return;
    }
    StageElement filter = HighPasses.strongest(filters, PROBE_HZ);
    List<Fix> fixes =
        filters.size() == 1
            ? StageOrder.write(evidence, filter, "cutoff", LOW_CUTOFF, true)
            : List.of();
    report.accept(
        evidence.finding(
            CARD,
            StageOrder.at(filter, "cutoff"),
            "Takes " + Figures.amount(lossDb) + " at 40 Hz from the whole mix",
            "Lower the cutoff to 20 to 25 Hz at 12 dB/oct, or filter the guilty channels.",
            List.of(),
            fixes));
  }
}
