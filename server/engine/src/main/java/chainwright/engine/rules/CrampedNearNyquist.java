package chainwright.engine.rules;

import chainwright.dsp.filter.FrequencyGrid;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageSound;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A bilinear curve differs audibly from the analogue one that is meant.
 *
 * <p>Why: two sample rates give two sounds for one text.
 *
 * <p>At fault: {@code bell 16 kHz +2 dB Q 1 curve bilinear}. Not at fault: {@code bell 16 kHz +2 dB
 * Q 1}.
 */
public final class CrampedNearNyquist implements Rule {

  private static final double NEAR_SHARE = 0.25;
  private static final double SAFE_SHARE = 0.499;
  private static final double AUDIBLE_DB = 1;
  private static final double LOWEST_HZ = 1000;
  private static final double HIGHEST_HZ = 20_000;
  private static final int POINTS = 121;

  private static final RuleCard CARD =
      new RuleCard(
          "cramped-near-nyquist",
          Severity.INFO,
          "A curve cramped near half the sample rate",
          "The bilinear curve is squeezed towards half the sample rate. Two sample rates"
              + " then give two different sounds for one text.",
          List.of("CALC", "W3C"));

  /** Makes the rule, which has no state. */
  public CrampedNearNyquist() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (StageElement element : evidence.path().stages()) {
      double rateHz = element.rate().hertz();
      boolean isCramped =
          element.context().is("curve", "bilinear")
              && EqualiserMoves.isMove(element)
              && EqualiserMoves.centreHz(element) > NEAR_SHARE * rateHz;
      Optional<Response> meant = element.sound().flatMap(StageSound::prototype);
      if (isCramped && meant.isPresent()) {
        check(evidence, element, meant.get(), Math.min(HIGHEST_HZ, SAFE_SHARE * rateHz), report);
      }
    }
  }

  private static void check(
      Evidence evidence,
      StageElement element,
      Response meant,
      double highestHz,
      Consumer<Finding> report) {
    double[] hertz = FrequencyGrid.logarithmic(LOWEST_HZ, highestHz, POINTS).toHertz();
    double[] wanted = meant.toDecibels(hertz);
    double[] built =
        EqualiserMoves.response(element).map(one -> one.toDecibels(hertz)).orElse(wanted);
    int worst = 0;
    for (int i = 0; i < POINTS; i++) {
      boolean isWorse = Math.abs(built[i] - wanted[i]) > Math.abs(built[worst] - wanted[worst]);
      worst = isWorse ? i : worst;
    }
    double errorDb = built[worst] - wanted[worst];
    if (Math.abs(errorDb) >= AUDIBLE_DB) {
      report.accept(finding(evidence, element, errorDb, hertz[worst]));
    }
  }

  private static Finding finding(
      Evidence evidence, StageElement element, double errorDb, double hertz) {
    return evidence.finding(
        CARD,
        Mends.at(element, "curve"),
        "at "
            + Figures.hertz(hertz)
            + " this curve is "
            + Figures.change(errorDb)
            + " away from the analogue one",
        "Write `curve analogue`, or leave `curve` out.",
        List.of(),
        List.of(
            Edits.changing(
                "Write `analogue`", true, List.of(Mends.set(element, "curve", "analogue")))));
  }
}
