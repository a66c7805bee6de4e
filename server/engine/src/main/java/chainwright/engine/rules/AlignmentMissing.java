package chainwright.engine.rules;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Definition;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * An analogue insert stands in a file whose session says no alignment.
 *
 * <p>Why: levels cannot be computed or recalled.
 *
 * <p>At fault: {@code an insert, and no session with an alignment}. Not at fault: {@code alignment
 * 0 dBu = -18 dBFS}.
 */
public final class AlignmentMissing implements Rule {

  private static final String ALIGNMENT = "alignment 0 dBu = -18 dBFS";

  private static final RuleCard CARD =
      new RuleCard(
          "alignment-missing",
          Severity.ERROR,
          "An insert without alignment",
          "Levels cannot be computed or recalled: practice differs by 6 dB, +18 against"
              + " +24 dBu at full scale. A wrong guess either clips the loop or leaves it 6 dB"
              + " too low.",
          List.of("R68", "RP155"));

  /** Makes the rule, which has no state. */
  public AlignmentMissing() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    if (evidence.scope().alignment().isPresent()) {
      return;
    }
    for (AnalogueInsert insert : AnalogueInsert.in(evidence)) {
      report.accept(
          evidence.finding(
              CARD,
              insert.at(insert.wordSpan()),
              "this insert has levels in dBu, and nothing says which digital level 0 dBu is",
              "Add `" + ALIGNMENT + "` to the session, or the alignment of your converters.",
              List.of(),
              List.of(fix(evidence))));
    }
  }

  private static Fix fix(Evidence evidence) {
    Optional<Definition.Session> session = evidence.scope().session();
    PlacedEdit edit =
        session.isPresent() ? intoSession(session.get()) : newSession(evidence.track());
    return Edits.changing("Add `" + ALIGNMENT + "`", true, List.of(edit));
  }

  private static PlacedEdit intoSession(Definition.Session session) {
    String text = session.section().text();
    int brace = text.indexOf('{', session.lineSpan().start());
    boolean hasBlock = brace >= 0 && brace < session.span().end();
    int at = hasBlock ? brace + 1 : session.lineSpan().end();
    boolean isLineFull = hasBlock && at < text.length() && text.charAt(at) != '\n';
    String words =
        hasBlock ? "\n  " + ALIGNMENT + (isLineFull ? "\n " : "") : " {\n  " + ALIGNMENT + "\n}";
    return new PlacedEdit(session.section(), new TextEdit(new TextSpan(at, at), words));
  }

  private static PlacedEdit newSession(Definition.Track track) {
    int at = track.lineSpan().start();
    return new PlacedEdit(
        track.section(),
        new TextEdit(new TextSpan(at, at), "session \"Session\" {\n  " + ALIGNMENT + "\n}\n\n"));
  }
}
