package chainwright.engine.rules;

import chainwright.dsp.dynamics.Ballistics;
import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageSound;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * Attack and release are so short that the gain follows the wave of the lowest note.
 *
 * <p>Why: the gain follows the wave itself and bends it.
 *
 * <p>At fault: {@code compressor attack 1 ms release 15 ms on a bass}. Not at fault: {@code attack
 * 20 ms release 300 ms}.
 */
public final class LowNoteDistortion implements Rule {

  private static final double WARNING_SHARE = 0.01;
  private static final double INFO_SHARE = 0.003;
  private static final double LONG_ATTACK = 0.5;
  private static final double LONG_RELEASE = 5;
  private static final double LONGER = 1.5;
  private static final int MOST_TRIES = 8;
  private static final double ROUNDING = 1e-9;

  private static final RuleCard CARD =
      new RuleCard(
          "low-note-distortion",
          Severity.WARNING,
          "A compressor that bends low notes",
          "When attack and release are both short against the period of the lowest note,"
              + " the gain follows the wave itself and bends it. Attack alone is not decisive:"
              + " a long release keeps the gain still.",
          List.of("CALC", "KATZ"));

  /** Makes the rule, which has no state. */
  public LowNoteDistortion() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    OptionalDouble lowest = evidence.path().lowestHz();
    if (lowest.isEmpty()) {
      return;
    }
    for (StageElement element : evidence.path().stages()) {
      Optional<CompressorDesign> design = element.sound().flatMap(StageSound::compressor);
      boolean hearsLowNotes = element.sound().flatMap(StageSound::detection).isEmpty();
      boolean hasTimes =
          element.stage().kind().setting("attack").isPresent()
              && element.stage().kind().setting("release").isPresent();
      if (design.isPresent() && hearsLowNotes && hasTimes) {
        check(evidence, element, design.get(), lowest.getAsDouble(), report);
      }
    }
  }

  private static void check(
      Evidence evidence,
      StageElement element,
      CompressorDesign design,
      double noteHz,
      Consumer<Finding> report) {
    chainwright.dsp.dynamics.LowNoteDistortion found =
        chainwright.dsp.dynamics.LowNoteDistortion.analyze(design, noteHz);
    OptionalDouble share = PathShare.of(element, evidence.path().elements());
    if (share.isEmpty()) {
      return;
    }
    double heardShare = share.getAsDouble() * found.thdShare();
    if (heardShare >= WARNING_SHARE) {
      report.accept(finding(evidence, CARD.severity(), element, design, noteHz, heardShare));
    } else if (evidence.path().isLowestDeclared() && heardShare >= INFO_SHARE) {
      report.accept(finding(evidence, Severity.INFO, element, design, noteHz, heardShare));
    }
  }

  private static Finding finding(
      Evidence evidence,
      Severity severity,
      StageElement element,
      CompressorDesign design,
      double noteHz,
      double heardShare) {
    double attackSeconds =
        roundUp(Math.max(design.ballistics().attackSeconds(), LONG_ATTACK / noteHz), 0.001);
    double written = element.stage().settings().number("release").orElse(0.0);
    double releaseSeconds = roundUp(Math.max(written, LONG_RELEASE / noteHz), 0.005);
    for (int i = 0;
        i < MOST_TRIES && !isClear(design, noteHz, attackSeconds, releaseSeconds);
        i++) {
      releaseSeconds = roundUp(LONGER * releaseSeconds, 0.005);
    }
    String attack = Figures.milliseconds(attackSeconds);
    String release = Figures.milliseconds(releaseSeconds);
    String note =
        Figures.hertz(noteHz)
            + (evidence.path().isLowestDeclared() ? "" : ", the usual lowest note,");
    return evidence.finding(
        CARD,
        severity,
        Mends.at(element, "release"),
        "a steady tone at "
            + note
            + " that peaks 6 dB over the threshold would get "
            + Figures.percent(heardShare)
            + " of distortion: its period is "
            + Figures.milliseconds(1 / noteHz),
        "Set the attack to " + attack + " and the release to " + release + " or more.",
        List.of(),
        fixes(element, design, noteHz, attackSeconds, releaseSeconds));
  }

  private static List<Fix> fixes(
      StageElement element,
      CompressorDesign design,
      double noteHz,
      double attackSeconds,
      double releaseSeconds) {
    boolean isWritable =
        element.stage().settings().word("detector").filter("programme"::equals).isEmpty();
    if (!isWritable || !isClear(design, noteHz, attackSeconds, releaseSeconds)) {
      return List.of();
    }
    String attack = Figures.milliseconds(attackSeconds);
    String release = Figures.milliseconds(releaseSeconds);
    return List.of(
        Edits.changing(
            "Attack " + attack + ", release " + release,
            true,
            List.of(Mends.set(element, "attack", attack), Mends.set(element, "release", release))));
  }

  private static boolean isClear(
      CompressorDesign design, double noteHz, double attackSeconds, double releaseSeconds) {
    Ballistics longer = design.ballistics().withAttack(attackSeconds).withRelease(releaseSeconds);
    return chainwright.dsp.dynamics.LowNoteDistortion.analyze(design.withBallistics(longer), noteHz)
            .thdShare()
        < INFO_SHARE;
  }

  private static double roundUp(double seconds, double stepSeconds) {
    return Math.ceil(seconds / stepSeconds - ROUNDING) * stepSeconds;
  }
}
