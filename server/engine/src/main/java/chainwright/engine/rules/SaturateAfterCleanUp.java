package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.function.Consumer;

/**
 * A deep corrective cut stands behind saturation or clipping.
 *
 * <p>Why: distortion multiplies a resonance into harmonics that a later cut cannot reach.
 *
 * <p>At fault: {@code saturation}, then {@code notch 412 Hz}. Not at fault: the notch first, or a
 * cut of less than 4 dB. Whether the band holds a resonance, only a recording tells; a cut that
 * deep is taken as a sign of one.
 */
public final class SaturateAfterCleanUp implements Rule {

  private static final double DEEP_CUT_DB = -4;

  private static final RuleCard CARD =
      new RuleCard(
          "saturate-after-clean-up",
          Severity.INFO,
          "Saturation before the clean-up",
          "Distortion multiplies a resonance into harmonics that a later cut cannot reach. Cleaning"
              + " first costs nothing and keeps the colour on the music.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public SaturateAfterCleanUp() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    StageElement distortion = null;
    for (StageElement element : StageOrder.placed(evidence)) {
      distortion = distortion == null && StageOrder.isDistortion(element) ? element : distortion;
      if (distortion != null && isCut(element)) {
        report.accept(finding(evidence, distortion, element));
      }
    }
  }

  private static boolean isCut(StageElement element) {
    return element.word().equals("notch")
        || (element.word().equals("bell") && element.context().number("gain", 0) <= DEEP_CUT_DB);
  }

  private static Finding finding(Evidence evidence, StageElement distortion, StageElement cut) {
    return evidence.finding(
        CARD,
        StageOrder.at(cut),
        "What this "
            + cut.word()
            + " takes"
            + cut.stage().settings().value("centre").map(centre -> " at " + centre).orElse("")
            + " has already been multiplied into harmonics; how strong it is, only a recording"
            + " tells",
        "Move the cut above the `" + distortion.word() + "` line.",
        List.of(StageOrder.related(distortion, "makes the harmonics")),
        StageOrder.moveBefore(
            evidence,
            "Move `" + cut.word() + "` before `" + distortion.word() + "`",
            List.of(cut),
            distortion));
  }
}
