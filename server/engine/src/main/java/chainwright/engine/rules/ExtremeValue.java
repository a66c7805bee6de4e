package chainwright.engine.rules;

import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.function.Consumer;

/**
 * A value lies at or beyond the extreme mark of the trade.
 *
 * <p>Why: readers cannot tell courage from a typing error.
 *
 * <p>At fault: {@code compressor threshold -20 dBFS ratio 20:1}. Not at fault: {@code compressor
 * threshold -20 dBFS ratio 3:1}.
 */
public final class ExtremeValue implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "extreme-value",
          Severity.WARNING,
          "An extreme value",
          "The trade rarely goes there, and readers cannot tell courage from a typing"
              + " error. A note of one line below the stage protects a brave choice from being"
              + " repaired.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public ExtremeValue() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (TradeVerdict found : TradeVerdict.in(evidence, TradeRange.Verdict.EXTREME)) {
      report.accept(finding(evidence, found));
    }
  }

  private static Finding finding(Evidence evidence, TradeVerdict found) {
    boolean isExplained = !found.said().clauses().notes().isEmpty();
    return new Finding(
        CARD.code(),
        isExplained ? Severity.INFO : CARD.severity(),
        found.place(),
        found.named() + " is extreme for " + evidence.sourceInWords() + "; " + found.usual(),
        CARD.why(),
        "Write " + found.nearest() + ", or keep it and say why in a note.",
        found.sources(),
        found.topic(),
        List.of(),
        found.fixes());
  }
}
