package chainwright.engine.rules;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Declarations;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;
import java.util.function.Consumer;

/**
 * A pre-fader send feeds a bus that is heard in the mix.
 *
 * <p>Why: muted channels still sound.
 *
 * <p>At fault: {@code send hall -14 dB pre-fader}. Not at fault: {@code send hall -14 dB}.
 */
public final class PreFaderSurprise implements Rule {

  private static final String PRE_FADER = "pre-fader";

  private static final RuleCard CARD =
      new RuleCard(
          "pre-fader-surprise",
          Severity.INFO,
          "A pre-fader send to the mix",
          "Fader moves change the wet share, and muted channels still sound. Automation"
              + " of the fader no longer controls the whole sound.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public PreFaderSurprise() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    Section section = evidence.track().section();
    for (Declarations.Send send : evidence.track().declarations().sends()) {
      int at =
          section.text().substring(send.span().start(), send.span().end()).lastIndexOf(PRE_FADER);
      if (send.isPreFader() && at >= 0 && isHeard(evidence, send.bus().text())) {
        TextSpan word = TextSpan.ofLength(send.span().start() + at, PRE_FADER.length());
        report.accept(
            evidence.finding(
                CARD,
                new Place(section, word),
                "the fader of `"
                    + evidence.track().name().text()
                    + "` does not move what is sent to `"
                    + send.bus().text()
                    + "`",
                "Write `post-fader`, unless the effect is to stay when the sound is faded.",
                List.of(),
                List.of(
                    Edits.changing(
                        "Write `post-fader`",
                        true,
                        List.of(new PlacedEdit(section, new TextEdit(word, "post-fader")))))));
      }
    }
  }

  /** A bus is heard if it goes anywhere; one without a way out is a headphone mix. */
  private static boolean isHeard(Evidence evidence, String bus) {
    return bus.equals("mix")
        || evidence
            .scope()
            .bus(bus)
            .filter(one -> !one.declarations().routes().isEmpty())
            .isPresent();
  }
}
