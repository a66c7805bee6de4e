package chainwright.engine.rules;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Declarations;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Section;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * A chain reaches one bus by two dry ways.
 *
 * <p>Why: the sound arrives twice, up to 6 dB louder or combed.
 *
 * <p>At fault: {@code to mix, and to voices, which goes to mix}. Not at fault: {@code to voices
 * only}.
 */
public final class TwoWaysToTheMix implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "two-ways-to-the-mix",
          Severity.WARNING,
          "Two ways to one bus",
          "The sound arrives twice: up to 6 dB louder and, with any difference in"
              + " latency, combed. Fader moves act on one way only and seem weak.",
          List.of("CALC"));

  /** Makes the rule, which has no state. */
  public TwoWaysToTheMix() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<Declarations.Route> routes = evidence.track().declarations().routes();
    for (int i = 1; i < routes.size(); i++) {
      for (int k = 0; k < i; k++) {
        Optional<String> shared = shared(evidence.scope(), routes.get(k), routes.get(i));
        if (shared.isPresent()) {
          report.accept(finding(evidence, routes.get(k), routes.get(i), shared.get()));
          break;
        }
      }
    }
  }

  private static Optional<String> shared(
      Scope scope, Declarations.Route one, Declarations.Route other) {
    Set<String> reached = reached(scope, other.bus().text());
    return reached(scope, one.bus().text()).stream().filter(reached::contains).findFirst();
  }

  /** The buses that a route reaches, nearest first. */
  private static Set<String> reached(Scope scope, String first) {
    Set<String> seen = new LinkedHashSet<>();
    List<String> open = new ArrayList<>(List.of(first));
    for (int i = 0; i < open.size(); i++) {
      if (seen.add(open.get(i))) {
        scope
            .track(open.get(i))
            .ifPresent(
                track ->
                    track.declarations().routes().forEach(route -> open.add(route.bus().text())));
      }
    }
    return seen;
  }

  private static Finding finding(
      Evidence evidence, Declarations.Route one, Declarations.Route other, String shared) {
    Section section = evidence.track().section();
    Declarations.Route direct = one.bus().text().equals(shared) ? one : other;
    List<PlacedEdit> removal = Mends.remove(section, direct.span());
    List<Fix> fixes =
        removal.isEmpty()
            ? List.of()
            : List.of(
                Edits.changing("Remove the way to `" + direct.bus().text() + "`", true, removal));
    return evidence.finding(
        CARD,
        new Place(section, other.span()),
        "`"
            + shared
            + "` is reached twice, over `"
            + one.bus().text()
            + "` and `"
            + other.bus().text()
            + "`",
        "Remove the direct way to `" + shared + "`.",
        List.of(new Finding.Related(new Place(section, one.span()), "the other way out")),
        fixes);
  }
}
