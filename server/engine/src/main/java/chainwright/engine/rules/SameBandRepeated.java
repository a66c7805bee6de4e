package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Clauses;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.NumberText;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * Two bells of one sign stand within a sixth of an octave, with nothing but linear stages between.
 *
 * <p>Why: one line says it better, and the sum is visible.
 *
 * <p>At fault: {@code bell 250 Hz -2 dB, then bell 260 Hz -2.5 dB}. Not at fault: {@code bell 255
 * Hz -4.5 dB}.
 */
public final class SameBandRepeated implements Rule {

  private static final double NEAR_OCTAVES = 1 / 6.0;

  private static final RuleCard CARD =
      new RuleCard(
          "same-band-repeated",
          Severity.HINT,
          "One band written twice",
          "One line says it better and the sum is visible. Edits to one of them later"
              + " surprise because the other still acts.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public SameBandRepeated() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (List<StageElement> run : EqualiserMoves.runs(evidence.path())) {
      check(evidence, run.stream().filter(stage -> stage.word().equals("bell")).toList(), report);
    }
  }

  private static void check(Evidence evidence, List<StageElement> bells, Consumer<Finding> report) {
    for (int i = 1; i < bells.size(); i++) {
      for (int k = 0; k < i; k++) {
        if (isSame(bells.get(k), bells.get(i))) {
          report.accept(finding(evidence, bells.get(k), bells.get(i)));
          break;
        }
      }
    }
  }

  private static boolean isSame(StageElement one, StageElement other) {
    double octaves =
        Math.log(EqualiserMoves.centreHz(one) / EqualiserMoves.centreHz(other)) / Math.log(2);
    return Math.abs(octaves) <= NEAR_OCTAVES
        && EqualiserMoves.gainDb(one) * EqualiserMoves.gainDb(other) > 0;
  }

  private static Finding finding(Evidence evidence, StageElement first, StageElement second) {
    double firstDb = EqualiserMoves.gainDb(first);
    double secondDb = EqualiserMoves.gainDb(second);
    double firstHz = EqualiserMoves.centreHz(first);
    double secondHz = EqualiserMoves.centreHz(second);
    double centreHz = firstHz * Math.pow(secondHz / firstHz, secondDb / (firstDb + secondDb));
    String merged =
        Figures.hertz(centreHz)
            + " "
            + Figures.change(firstDb + secondDb)
            + " Q "
            + NumberText.format(q(first, second), 2);
    return evidence.finding(
        CARD,
        Mends.at(second, "centre"),
        "two bells at "
            + Figures.hertz(firstHz)
            + " and "
            + Figures.hertz(secondHz)
            + " add up to "
            + Figures.change(firstDb + secondDb),
        "Merge them to one: " + merged + ".",
        List.of(new Finding.Related(Mends.at(first, "centre"), "the other bell stands here")),
        fixes(first, second, centreHz));
  }

  private static double q(StageElement first, StageElement second) {
    return Math.sqrt(first.context().number("Q", 1) * second.context().number("Q", 1));
  }

  private static List<Fix> fixes(StageElement first, StageElement second, double centreHz) {
    List<PlacedEdit> removal = Mends.remove(second.place().section(), second.stage().span());
    boolean isTogether = first.place().section() == second.place().section();
    // What else is said on the second line would be lost.
    Clauses clauses = second.stage().clauses();
    TextSpan line = second.stage().span();
    boolean isBare =
        clauses.label().isEmpty()
            && clauses.deliberates().isEmpty()
            && clauses.notes().isEmpty()
            && !removal.isEmpty()
            && second
                .place()
                .section()
                .text()
                .substring(line.end(), removal.get(0).edit().span().end())
                .isBlank();
    if (!isBare || !isTogether) {
      return List.of();
    }
    List<PlacedEdit> edits = new ArrayList<>(removal);
    double sumDb = EqualiserMoves.gainDb(first) + EqualiserMoves.gainDb(second);
    edits.add(Mends.set(first, "centre", Figures.hertz(centreHz)));
    edits.add(Mends.set(first, "gain", Figures.change(sumDb)));
    edits.add(Mends.set(first, "Q", NumberText.format(q(first, second), 2)));
    return List.of(Edits.changing("Merge the two bells", true, edits));
  }
}
