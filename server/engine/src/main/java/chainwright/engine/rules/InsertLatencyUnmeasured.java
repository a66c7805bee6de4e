package chainwright.engine.rules;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.function.Consumer;

/**
 * An analogue insert does not say how long its round trip takes.
 *
 * <p>Why: wrong by a few samples means a comb filter.
 *
 * <p>At fault: {@code insert "box" send 0 dBu}. Not at fault: {@code insert "box" send 0 dBu
 * latency 9.1 ms}.
 */
public final class InsertLatencyUnmeasured implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "insert-latency-unmeasured",
          Severity.WARNING,
          "An insert whose latency is not measured",
          "Wrong by a few samples means a comb filter as soon as the sound meets another"
              + " path. Driver and buffer changes alter the number from day to day.",
          List.of("CALC", "CP"));

  /** Makes the rule, which has no state. */
  public InsertLatencyUnmeasured() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    boolean isGrouped = evidence.track().declarations().group().isPresent();
    for (AnalogueInsert insert : AnalogueInsert.in(evidence)) {
      boolean isMissing = insert.insert().settings().number("latency").isEmpty();
      if (isMissing && insert.isRead("latency")) {
        boolean isBeside = insert.isPartial() || isGrouped;
        report.accept(
            evidence.finding(
                CARD,
                isBeside ? Severity.ERROR : CARD.severity(),
                insert.at(insert.wordSpan()),
                isBeside
                    ? "the latency of this insert is not written, and another path of the same sound"
                        + " runs beside it"
                    : "the latency of this insert is not written",
                "Measure the loop and write it, such as `latency 9.1 ms`.",
                List.of(),
                List.of()));
      }
    }
  }
}
