package chainwright.engine.rules;

import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageSound;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What stands later, buses included, gives back most of what a cut took.
 *
 * <p>Why: the fault returns, with extra phase shift.
 *
 * <p>At fault: {@code bell 300 Hz -4 dB, then low-shelf 400 Hz +4 dB}. Not at fault: {@code the
 * shelf at 150 Hz}.
 */
public final class LaterBoostUndoesCut implements Rule {

  private static final double LEAST_CUT_DB = -2;
  private static final double LEAST_BOOST_DB = 0.4;
  private static final double UNDONE_SHARE = 0.6;
  private static final double KEPT_SHARE = 0.5;

  private static final RuleCard CARD =
      new RuleCard(
          "later-boost-undoes-cut",
          Severity.WARNING,
          "A later boost undoes a cut",
          "The later move gives back what the first took; the fault returns with extra"
              + " phase shift. It often happens over bus shelves that nobody connects with the"
              + " channel.",
          List.of("CALC", "CP"));

  /** Makes the rule, which has no state. */
  public LaterBoostUndoesCut() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<PathElement> elements = evidence.path().elements();
    List<SignalPath> buses = evidence.busesAfter();
    for (int i = 0; i < elements.size(); i++) {
      if (elements.get(i) instanceof StageElement cut
          && !cut.isBypassed()
          && EqualiserMoves.isMove(cut)
          && EqualiserMoves.gainDb(cut) <= LEAST_CUT_DB) {
        List<PathElement> later = new ArrayList<>(elements.subList(i + 1, elements.size()));
        buses.forEach(bus -> later.addAll(bus.elements()));
        check(evidence, cut, later, report);
      }
    }
  }

  private static void check(
      Evidence evidence, StageElement cut, List<PathElement> later, Consumer<Finding> report) {
    double hertz = EqualiserMoves.strongestHz(cut);
    if (isSurelyKept(cut, later, hertz)) {
      return;
    }
    double cutDb = -EqualiserMoves.decibelsAt(cut, hertz);
    double givenBackDb = boostsDb(later, hertz);
    Optional<StageElement> strongest = strongest(later, hertz);
    boolean isUndone =
        cutDb > 0
            && givenBackDb >= UNDONE_SHARE * cutDb
            && strongest.isPresent()
            && !EqualiserMoves.cancel(cut, strongest.get());
    if (isUndone) {
      report.accept(finding(evidence, cut, later, strongest.get(), hertz, cutDb, givenBackDb));
    }
  }

  private static Finding finding(
      Evidence evidence,
      StageElement cut,
      List<PathElement> later,
      StageElement boost,
      double hertz,
      double cutDb,
      double givenBackDb) {
    boolean isAcrossDynamics =
        later.subList(0, later.indexOf(boost)).stream().anyMatch(LaterBoostUndoesCut::isDynamics);
    String what =
        "the cut takes "
            + Figures.amount(cutDb)
            + " at "
            + Figures.hertz(hertz)
            + ", and what stands later gives "
            + Figures.amount(givenBackDb)
            + " of it back"
            + (isAcrossDynamics ? "; a compressor stands between, which may be the purpose" : "");
    return evidence.finding(
        CARD,
        isAcrossDynamics ? Severity.INFO : CARD.severity(),
        Mends.at(cut, "gain"),
        what,
        "Shift or narrow the later boost, or lower it until half of the cut stays.",
        List.of(
            new Finding.Related(
                Mends.at(boost, "gain"),
                "this gives back " + Figures.amount(EqualiserMoves.decibelsAt(boost, hertz)))),
        fixes(boost, hertz, cutDb, givenBackDb));
  }

  /** Lowers the strongest boost so far that half of the cut stays, or removes it. */
  private static List<Fix> fixes(
      StageElement boost, double hertz, double cutDb, double givenBackDb) {
    double boostDb = EqualiserMoves.decibelsAt(boost, hertz);
    double keptShare = (KEPT_SHARE * cutDb - (givenBackDb - boostDb)) / boostDb;
    double gainDb = Math.floor(10 * keptShare * EqualiserMoves.gainDb(boost)) / 10;
    if (gainDb > LEAST_BOOST_DB) {
      String gain = Figures.change(gainDb);
      return List.of(
          Edits.changing(
              "Lower the boost to `" + gain + "`", true, List.of(Mends.set(boost, "gain", gain))));
    }
    List<PlacedEdit> removal = Mends.remove(boost.place().section(), boost.stage().span());
    return removal.isEmpty()
        ? List.of()
        : List.of(Edits.changing("Remove the boost", true, removal));
  }

  /** Asks so without designing the filters, which is enough for most. */
  private static boolean isSurelyKept(StageElement cut, List<PathElement> later, double hertz) {
    double mostGivenBackDb = 0;
    for (PathElement element : later) {
      if (element instanceof StageElement move
          && !move.isBypassed()
          && EqualiserMoves.isMove(move)) {
        mostGivenBackDb += EqualiserMoves.estimateAt(move, hertz).mostDb();
      }
    }
    return mostGivenBackDb < -UNDONE_SHARE * EqualiserMoves.estimateAt(cut, hertz).mostDb();
  }

  private static double boostsDb(List<PathElement> later, double hertz) {
    List<PathElement> moves =
        later.stream()
            .filter(element -> element instanceof StageElement one && EqualiserMoves.isMove(one))
            .toList();
    return SignalPath.product(moves).decibelsAt(hertz);
  }

  private static Optional<StageElement> strongest(List<PathElement> later, double hertz) {
    return later.stream()
        .filter(element -> !element.isBypassed())
        .filter(StageElement.class::isInstance)
        .map(StageElement.class::cast)
        .filter(one -> EqualiserMoves.isMove(one) && EqualiserMoves.gainDb(one) > 0)
        .max(Comparator.comparingDouble(one -> EqualiserMoves.decibelsAt(one, hertz)));
  }

  private static boolean isDynamics(PathElement element) {
    return element instanceof StageElement stage
        && !stage.isBypassed()
        && stage.sound().flatMap(StageSound::compressor).isPresent();
  }
}
