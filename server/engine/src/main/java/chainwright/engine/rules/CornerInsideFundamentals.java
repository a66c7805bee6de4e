package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.function.Consumer;

/**
 * The high-passes of a chain take the fundamental of its lowest note.
 *
 * <p>Why: the part sounds thin on its lowest notes only.
 *
 * <p>At fault: {@code lowest-note C3} with {@code high-pass 160 Hz}. Not at fault: {@code high-pass
 * 90 Hz}. Where no lowest note is declared, the lowest usual one of the source stands in, which few
 * recordings reach: then 6 dB are tolerated (common practice, no source), and the finding says so
 * and is never more than information.
 */
public final class CornerInsideFundamentals implements Rule {

  private static final double INFO_DB = 1.5;
  private static final double WARNING_DB = 3;
  private static final double UNDECLARED_DB = 6;
  private static final double FIRST_ORDER_DB_PER_OCTAVE = 6;
  private static final double SECOND_ORDER_DB_PER_OCTAVE = 12;

  private static final RuleCard CARD =
      new RuleCard(
          "corner-inside-fundamentals",
          Severity.WARNING,
          "A corner among the fundamentals",
          "The lowest notes lose their fundamental and the part sounds thin only on those notes."
              + " The ear takes it for a playing problem.",
          List.of("CALC", "IZH"));

  /** Makes the rule, which has no state. */
  public CornerInsideFundamentals() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> filters = HighPasses.of(evidence.path());
    if (filters.isEmpty() || evidence.path().lowestHz().isEmpty()) {
      return;
    }
    double lowestHz = evidence.path().lowestHz().getAsDouble();
    double leastDb = evidence.path().isLowestDeclared() ? INFO_DB : UNDECLARED_DB;
    if (HighPasses.mostLossDb(filters, lowestHz) < leastDb) {
      return;
    }
    double lossDb = HighPasses.lossDb(filters, lowestHz);
    if (lossDb >= leastDb) {
      report.accept(finding(evidence, filters, lowestHz, lossDb));
    }
  }

  private static Finding finding(
      Evidence evidence, List<StageElement> filters, double lowestHz, double lossDb) {
    StageElement filter = HighPasses.strongest(filters, lowestHz);
    boolean isDeclared = evidence.path().isLowestDeclared();
    boolean isGrave = isDeclared && lossDb >= WARNING_DB;
    String note =
        isDeclared
            ? "the lowest note, " + Figures.hertz(lowestHz)
            : "the usual lowest note of "
                + evidence.sourceInWords()
                + ", "
                + Figures.hertz(lowestHz)
                + ", as no `lowest-note` is declared";
    double betterHz = Math.floor(lowestHz * share(HighPasses.slopeDbPerOctave(filter)));
    boolean restIsHarmless =
        HighPasses.lossDb(HighPasses.without(filters, filter), lowestHz) < INFO_DB / 3;
    List<Fix> fixes =
        restIsHarmless
            ? StageOrder.write(evidence, filter, "cutoff", Figures.hertz(betterHz), true)
            : List.of();
    return evidence.finding(
        CARD,
        isGrave ? Severity.WARNING : Severity.INFO,
        StageOrder.at(filter, "cutoff"),
        "Takes " + Figures.amount(lossDb) + " from " + note,
        "Set the cutoff to "
            + Figures.hertz(betterHz)
            + ", or declare the `lowest-note` if it is higher.",
        List.of(),
        fixes);
  }

  /** How far below the lowest note the cutoff should lie, by the trade's rule of thumb. */
  private static double share(double slopeDbPerOctave) {
    if (slopeDbPerOctave <= FIRST_ORDER_DB_PER_OCTAVE) {
      return 0.5;
    }
    return slopeDbPerOctave <= SECOND_ORDER_DB_PER_OCTAVE ? 0.7 : 0.8;
  }
}
