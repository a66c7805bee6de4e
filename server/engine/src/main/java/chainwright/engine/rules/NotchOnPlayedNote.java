package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.function.Consumer;

/**
 * A notch lies on the lowest note that is declared, or on its second or third harmonic.
 *
 * <p>Why: that note vanishes each time it is played.
 *
 * <p>At fault: {@code notch 110 Hz on a bass whose lowest note is A2}. Not at fault: {@code a notch
 * away from the notes}.
 */
public final class NotchOnPlayedNote implements Rule {

  private static final double NEAR_SHARE = 0.03;
  private static final double LEAST_DEPTH_DB = -6;
  private static final int HARMONICS = 3;
  private static final String SHALLOW = "-4 dB";

  private static final RuleCard CARD =
      new RuleCard(
          "notch-on-played-note",
          Severity.WARNING,
          "A notch on a played note",
          "That note vanishes each time it is played. Bass lines with one missing note"
              + " sound badly played.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public NotchOnPlayedNote() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    if (!evidence.path().isLowestDeclared() || evidence.path().lowestHz().isEmpty()) {
      return;
    }
    double noteHz = evidence.path().lowestHz().getAsDouble();
    for (StageElement element : evidence.path().stages()) {
      double depthDb = element.stage().settings().number("depth").orElse(LEAST_DEPTH_DB);
      double centreHz = element.stage().settings().number("centre").orElse(0.0);
      if (element.word().equals("notch") && depthDb <= LEAST_DEPTH_DB) {
        for (int harmonic = 1; harmonic <= HARMONICS; harmonic++) {
          if (Math.abs(centreHz / (harmonic * noteHz) - 1) <= NEAR_SHARE) {
            report.accept(finding(evidence, element, depthDb, harmonic * noteHz, harmonic));
          }
        }
      }
    }
  }

  private static Finding finding(
      Evidence evidence, StageElement element, double depthDb, double hertz, int harmonic) {
    return evidence.finding(
        CARD,
        Mends.at(element, "centre"),
        "this notch, "
            + Figures.amount(-depthDb)
            + " deep, lies on "
            + (harmonic == 1 ? "the lowest note" : "harmonic " + harmonic + " of the lowest note")
            + " that is declared, "
            + Figures.hertz(hertz),
        "Try less depth, such as " + SHALLOW + ", a narrower notch, or a dynamic cut.",
        List.of(),
        List.of(
            Edits.changing(
                "Write `depth " + SHALLOW + "`",
                true,
                List.of(Mends.set(element, "depth", SHALLOW)))));
  }
}
