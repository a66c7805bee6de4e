package chainwright.engine.rules;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * A bus has no way out.
 *
 * <p>Why: sound is lost silently.
 *
 * <p>At fault: {@code bus plate without a route}. Not at fault: {@code bus plate with to mix}; a
 * bus that hears nothing but pre-fader sends, which is a mix for headphones or monitors; one with a
 * loudness or true peak to deliver.
 */
public final class OrphanSend implements Rule {

  private static final String MIX = "mix";

  private static final RuleCard CARD =
      new RuleCard(
          "orphan-send",
          Severity.WARNING,
          "A bus that goes nowhere",
          "Sound is lost silently. The mix still plays, so nobody notices until recall.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public OrphanSend() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    Definition.Track track = evidence.track();
    boolean isLost =
        track.isBus()
            && !track.name().text().equals(MIX)
            && evidence.scope().bus(MIX).isPresent()
            && Outlet.of(track).isEmpty()
            && !isEnd(evidence);
    if (isLost) {
      report.accept(lost(evidence));
    }
  }

  /**
   * Asks whether the bus is meant to be an end: a mix for players, or something to be delivered.
   */
  private static boolean isEnd(Evidence evidence) {
    Declarations own = evidence.track().declarations();
    if (own.maxTruePeak().isPresent() || own.loudness().isPresent()) {
      return true;
    }
    String name = evidence.track().name().text();
    List<Declarations.Send> sends = new ArrayList<>();
    for (Definition.Track other : evidence.scope().tracks()) {
      Declarations from = other.declarations();
      if (from.routes().stream().anyMatch(route -> route.bus().text().equals(name))) {
        return false;
      }
      from.sends().stream().filter(send -> send.bus().text().equals(name)).forEach(sends::add);
    }
    return !sends.isEmpty() && sends.stream().allMatch(Declarations.Send::isPreFader);
  }

  private static Finding lost(Evidence evidence) {
    Definition.Track track = evidence.track();
    String text = track.section().text();
    int brace = text.indexOf('{', track.lineSpan().start());
    boolean isOpen = brace >= 0 && brace + 1 < text.length() && text.charAt(brace + 1) == '\n';
    TextSpan after = new TextSpan(Math.max(brace + 1, 0), Math.max(brace + 1, 0));
    List<Fix> fixes =
        isOpen
            ? List.of(
                Edits.changing(
                    "Add `to " + MIX + "`",
                    true,
                    List.of(new PlacedEdit(track.section(), new TextEdit(after, "\n  to " + MIX)))))
            : List.of();
    return evidence.finding(
        CARD,
        new Place(track.section(), track.name().span()),
        "bus `" + track.name().text() + "` goes nowhere, though there is a bus `" + MIX + "`",
        "Add `to " + MIX + "`, or name the bus it goes to.",
        List.of(),
        fixes);
  }
}
