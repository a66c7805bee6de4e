package chainwright.engine.rules;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * The way out of a chain or bus leads back to it.
 *
 * <p>Why: the output feeds itself and may howl.
 *
 * <p>At fault: {@code bus a goes to b, and b to a}. Not at fault: {@code bus a goes to b, and b to
 * mix}.
 */
public final class BusLoop implements Rule {

  private static final RuleCard CARD =
      new RuleCard(
          "bus-loop",
          Severity.ERROR,
          "A loop of buses",
          "The output feeds itself: it cannot be computed and may howl. Feedback through"
              + " dynamics is not stable in general.",
          List.of("CP"));

  /** Makes the rule, which has no state. */
  public BusLoop() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    Definition.Track track = evidence.track();
    for (Outlet outlet : Outlet.of(track)) {
      List<String> circle = circle(evidence.scope(), track.name().text(), outlet.bus().text());
      if (!circle.isEmpty()) {
        List<PlacedEdit> removal = Mends.remove(track.section(), outlet.span());
        List<Fix> fixes =
            removal.isEmpty()
                ? List.of()
                : List.of(Edits.changing("Remove this way out", true, removal));
        report.accept(
            evidence.finding(
                CARD,
                new Place(track.section(), outlet.bus().span()),
                "the signal comes back here: " + String.join(" to ", circle),
                "Remove one of the links.",
                List.of(),
                fixes));
      }
    }
  }

  /** The shortest way from one name back to another, by breadth first; empty if there is none. */
  private static List<String> circle(Scope scope, String home, String first) {
    List<List<String>> open = new ArrayList<>(List.of(List.of(home, first)));
    Set<String> seen = new LinkedHashSet<>();
    for (int i = 0; i < open.size(); i++) {
      List<String> way = open.get(i);
      String at = way.get(way.size() - 1);
      if (at.equals(home)) {
        return way;
      }
      if (seen.add(at)) {
        scope
            .track(at)
            .map(Outlet::of)
            .orElse(List.of())
            .forEach(
                outlet -> {
                  List<String> longer = new ArrayList<>(way);
                  longer.add(outlet.bus().text());
                  open.add(longer);
                });
      }
    }
    return List.of();
  }
}
