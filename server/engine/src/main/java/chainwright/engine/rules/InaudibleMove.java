package chainwright.engine.rules;

import chainwright.dsp.filter.Estimate;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.quantity.NumberText;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A bell or shelf changes no third of an octave by 0.3 dB.
 *
 * <p>Why: it only lengthens the text.
 *
 * <p>At fault: {@code bell 1 kHz +0.3 dB Q 5}. Not at fault: {@code bell 1 kHz +1.5 dB Q 1}.
 */
public final class InaudibleMove implements Rule {

  private static final double AUDIBLE_DB = 0.3;
  private static final int REACH_STEPS = 12;
  private static final double STEPS_PER_OCTAVE = 6;
  private static final int POINTS = 9;

  private static final RuleCard CARD =
      new RuleCard(
          "inaudible-move",
          Severity.HINT,
          "A move that nobody hears",
          "Below the smallest steps that most people hear it only lengthens the text."
              + " Long texts of tiny moves hide the one that matters.",
          List.of("KATZ", "CP"));

  /** Makes the rule, which has no state. */
  public InaudibleMove() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (StageElement element : EqualiserMoves.of(evidence.path())) {
      Optional<Response> response = EqualiserMoves.response(element);
      if (response.isPresent()) {
        double centreHz = EqualiserMoves.centreHz(element);
        // Most moves are heard at their centre, and then nothing else has to be looked at.
        boolean isHeard =
            isSurelyHeard(response.get(), centreHz)
                || changeDb(response.get(), centreHz, 0) >= AUDIBLE_DB;
        double changeDb = isHeard ? AUDIBLE_DB : largestChangeDb(response.get(), centreHz);
        if (changeDb < AUDIBLE_DB) {
          report.accept(finding(evidence, element, changeDb));
        }
      }
    }
  }

  private static double largestChangeDb(Response response, double centreHz) {
    double largest = 0;
    for (int step = -REACH_STEPS; step <= REACH_STEPS; step++) {
      largest = Math.max(largest, changeDb(response, centreHz, step / STEPS_PER_OCTAVE));
    }
    return largest;
  }

  /** Asks so without designing the filter, which is enough for most. */
  private static boolean isSurelyHeard(Response response, double centreHz) {
    double power = 0;
    double errorDb = 0;
    for (double hertz : third(centreHz, 0)) {
      Estimate estimate = response.estimateAt(hertz);
      power += Math.pow(10, estimate.decibels() / 10);
      errorDb = Math.max(errorDb, estimate.errorDb());
    }
    return meanDb(power) - errorDb >= AUDIBLE_DB;
  }

  /** The mean power over the third of an octave that lies so many octaves from the centre. */
  private static double changeDb(Response response, double centreHz, double octaves) {
    double power = 0;
    for (double decibels : response.toDecibels(third(centreHz, octaves))) {
      power += Math.pow(10, decibels / 10);
    }
    return meanDb(power);
  }

  private static double[] third(double centreHz, double octaves) {
    double[] hertz = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      double third = (i - (POINTS - 1) / 2.0) / (POINTS - 1) / 3;
      hertz[i] = centreHz * Math.pow(2, octaves + third);
    }
    return hertz;
  }

  private static double meanDb(double summedPower) {
    return Math.abs(10 * Math.log10(summedPower / POINTS));
  }

  private static Finding finding(Evidence evidence, StageElement element, double changeDb) {
    List<PlacedEdit> removal = Mends.remove(element.place().section(), element.stage().span());
    List<Fix> fixes =
        removal.isEmpty() ? List.of() : List.of(Edits.changing("Remove it", true, removal));
    return evidence.finding(
        CARD,
        Mends.at(element, "gain"),
        "this changes no third of an octave by more than "
            + NumberText.format(changeDb, 2)
            + " dB, for a sound whose spectrum is even",
        "Remove it, or make it a clear move.",
        List.of(),
        fixes);
  }
}
