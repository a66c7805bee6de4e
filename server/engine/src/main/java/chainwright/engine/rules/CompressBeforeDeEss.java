package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A compressor stands before the first de-esser of a voice.
 *
 * <p>Why: an "s" that trips the compressor pulls the following vowel down and gets through itself.
 *
 * <p>At fault: {@code compressor}, then {@code de-ess}. Not at fault: a light de-esser, the
 * compressor, a second light de-esser. How much of the reduction falls on esses only a recording
 * tells; without one the worst is assumed for a voice and for a source that is not declared.
 */
public final class CompressBeforeDeEss implements Rule {

  private static final Set<String> VOICES =
      Set.of("lead-vocal", "backing-vocal", "speech", "choir", "vocal-group");

  private static final RuleCard CARD =
      new RuleCard(
          "compress-before-de-ess",
          Severity.INFO,
          "Compression before the de-esser",
          "An \"s\" that trips the compressor pulls the following vowel down and gets through"
              + " itself. Even \"s\" levels first let the compressor work on the phrase.",
          List.of("SEN", "COP", "COO", "CP"));

  /** Makes the rule, which has no state. */
  public CompressBeforeDeEss() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    boolean isVoice =
        evidence.path().source().map(kind -> VOICES.contains(kind.word())).orElse(true);
    StageElement compressor = null;
    for (StageElement element : StageOrder.placed(evidence)) {
      if (element.word().equals("de-ess")) {
        if (isVoice && compressor != null) {
          report.accept(finding(evidence, compressor, element));
        }
        return;
      }
      compressor = compressor == null && element.word().equals("compressor") ? element : compressor;
    }
  }

  private static Finding finding(Evidence evidence, StageElement compressor, StageElement deEsser) {
    return evidence.finding(
        CARD,
        StageOrder.at(deEsser),
        "The compressor hears the esses of "
            + evidence.sourceInWords()
            + " before the de-esser has evened them; how much of its reduction they cause, only a"
            + " recording tells",
        "Move the `de-ess` line above the `compressor` line, or add a light second one before it.",
        List.of(StageOrder.related(compressor, "the compressor that hears them")),
        StageOrder.moveBefore(
            evidence, "Move `de-ess` before `compressor`", List.of(deEsser), compressor));
  }
}
