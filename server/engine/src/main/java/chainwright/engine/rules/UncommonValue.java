package chainwright.engine.rules;

import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.function.Consumer;

/**
 * A value lies outside the usual range of the trade.
 *
 * <p>Why: another stage may do better.
 *
 * <p>At fault: {@code compressor threshold -20 dBFS ratio 6:1}. Not at fault: {@code compressor
 * threshold -20 dBFS ratio 3:1}.
 */
public final class UncommonValue implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "uncommon-value",
          Severity.HINT,
          "An uncommon value",
          "Most engineers stay inside the usual range for such a source; outside it the"
              + " first guess is often that another stage would do better.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public UncommonValue() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (TradeVerdict found : TradeVerdict.in(evidence, TradeRange.Verdict.UNCOMMON)) {
      report.accept(finding(evidence, found));
    }
  }

  private static Finding finding(Evidence evidence, TradeVerdict found) {
    return new Finding(
        CARD.code(),
        CARD.severity(),
        found.place(),
        found.named() + " is uncommon for " + evidence.sourceInWords() + "; " + found.usual(),
        CARD.why(),
        "Try " + found.nearest() + " first.",
        found.sources(),
        found.topic(),
        List.of(),
        found.fixes());
  }
}
