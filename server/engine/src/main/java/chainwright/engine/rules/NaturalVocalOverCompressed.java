package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Settings;
import chainwright.quantity.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A voice of natural intent is turned down by more than 6 dB.
 *
 * <p>Why: it flattens the phrasing and brings breaths forward.
 *
 * <p>At fault: {@code intent natural with an expected reduction of 9 dB}. Not at fault: {@code an
 * expected reduction of 2.5 dB}.
 */
public final class NaturalVocalOverCompressed implements Rule {

  private static final double ENOUGH_DB = 3;
  private static final double TOO_MUCH_DB = 6;
  private static final Set<String> VOICES =
      Set.of("lead-vocal", "backing-vocal", "speech", "choir", "vocal-group");

  private static final RuleCard CARD =
      new RuleCard(
          "natural-vocal-over-compressed",
          Severity.WARNING,
          "A natural voice compressed too much",
          "For a voice meant to sit naturally about 2 to 3 dB is enough; far more"
              + " flattens the phrasing and brings breaths and lips forward. Level moves by"
              + " hand keep the expression.",
          List.of("CP", "SEN", "CRO"));

  /** Makes the rule, which has no state. */
  public NaturalVocalOverCompressed() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> own = Reductions.expected(evidence.path());
    boolean isNatural =
        evidence
            .track()
            .declarations()
            .intent()
            .filter(one -> one.text().equals("natural"))
            .isPresent();
    boolean isVoice =
        evidence.path().source().filter(kind -> VOICES.contains(kind.word())).isPresent();
    if (!isNatural || !isVoice || own.isEmpty()) {
      return;
    }
    List<StageElement> all = new ArrayList<>(own);
    evidence.busesAfter().forEach(bus -> all.addAll(Reductions.expected(bus)));
    double sumDb = Reductions.sumDb(all);
    if (sumDb > ENOUGH_DB) {
      Severity severity = sumDb > TOO_MUCH_DB ? CARD.severity() : Severity.INFO;
      report.accept(finding(evidence, severity, own, all));
    }
  }

  private static Finding finding(
      Evidence evidence, Severity severity, List<StageElement> own, List<StageElement> all) {
    double sumDb = Reductions.sumDb(all);
    StageElement hardest = own.get(0);
    for (StageElement element : own) {
      hardest = Reductions.ofDb(element) > Reductions.ofDb(hardest) ? element : hardest;
    }
    Optional<Double> raised = raisedThresholdDbfs(hardest, sumDb);
    String threshold = raised.map(level -> Level.ofDbfs(level).toString()).orElse("");
    List<Fix> fixes = raised.isPresent() ? List.of(raise(hardest, sumDb, threshold)) : List.of();
    return evidence.finding(
        CARD,
        severity,
        Mends.at(hardest, "expected-reduction"),
        "`intent natural` is declared, but by `expected-reduction` the loudest notes are turned"
            + " down by "
            + Figures.amount(sumDb)
            + (all.size() > 1 ? " in all" : "")
            + "; natural is up to "
            + Figures.amount(ENOUGH_DB),
        (raised.isPresent() ? "Raise the threshold to " + threshold : "Raise the threshold")
            + " for 3 dB in all, or ride the level by hand before it.",
        related(all, hardest),
        fixes);
  }

  @SuppressWarnings("ReferenceEquality") // This stage, not another that is written alike.
  private static List<Finding.Related> related(List<StageElement> all, StageElement hardest) {
    return all.stream()
        .filter(one -> one != hardest)
        .map(
            one ->
                new Finding.Related(
                    Mends.at(one, "expected-reduction"),
                    "takes " + Figures.amount(Reductions.ofDb(one)) + " of it"))
        .toList();
  }

  private static Fix raise(StageElement hardest, double sumDb, String threshold) {
    String less = Figures.amount(Reductions.ofDb(hardest) - (sumDb - ENOUGH_DB));
    return Edits.changing(
        "Raise the threshold to `" + threshold + "`",
        true,
        List.of(
            Mends.set(hardest, "threshold", threshold),
            Mends.set(hardest, "expected-reduction", less)));
  }

  /** Beyond the knee each decibel of reduction less is worth 1 / (1 - 1/ratio) dB of threshold. */
  private static Optional<Double> raisedThresholdDbfs(StageElement element, double sumDb) {
    Settings settings = element.stage().settings();
    Optional<Double> threshold = settings.number("threshold");
    double ratio = settings.number("ratio").orElse(1.0);
    double lessDb = sumDb - ENOUGH_DB;
    if (threshold.isEmpty() || ratio <= 1 || Reductions.ofDb(element) <= lessDb) {
      return Optional.empty();
    }
    double raised = Math.round(10 * (threshold.get() + lessDb / (1 - 1 / ratio))) / 10.0;
    return raised <= 0 ? Optional.of(raised) : Optional.empty();
  }
}
