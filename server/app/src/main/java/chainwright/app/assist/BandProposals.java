package chainwright.app.assist;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Item;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Proposes where a band of a split lies. Each band begins where the one above it in the text ends,
 * so that edge is proposed before any other.
 *
 * @param catalogue the trade's knowledge
 * @param scope what the names mean
 * @param line the line of the band
 */
record BandProposals(Catalogue catalogue, Scope scope, WrittenLine line) {

  List<Proposal> all() {
    List<Item> before = line.before();
    Optional<Item> last = line.last();
    if (last.isEmpty()) {
      return line.isAtEnd() ? begun() : List.of();
    }
    if (before.get(0) instanceof Item.Word side) {
      boolean isEdge = side.text().equals("below") || side.text().equals("above");
      return isEdge ? edge(side.text()) : List.of();
    }
    ValueProposals range = values("range");
    if (last.get() instanceof Item.Range found) {
      return found.high().unit().isEmpty() ? range.unitsOf(found) : List.of();
    }
    if (last.get() instanceof Item.Amount low) {
      List<Proposal> more = new ArrayList<>(range.upperEnds(low, false));
      more.addAll(low.unit().isEmpty() ? range.unitsOf(low) : List.of());
      return more;
    }
    boolean isJoined = before.size() == 2 && before.get(0) instanceof Item.Amount;
    return isJoined && !line.isNumber()
        ? range.upperEnds((Item.Amount) before.get(0), true)
        : List.of();
  }

  private List<Proposal> edge(String side) {
    if (line.before().size() == 1) {
      Optional<String> met = metEdge();
      return met.isPresent() && side.equals("above") && !line.isNumber()
          ? List.of(met(met.get()))
          : values(side).values(line);
    }
    return line.bareNumber().map(values(side)::unitsOf).orElse(List.of());
  }

  private List<Proposal> begun() {
    Optional<String> met = metEdge();
    if (line.isNumber()) {
      return met.isPresent() ? List.of() : values("range").values(line);
    }
    if (met.isEmpty()) {
      List<Proposal> first = new ArrayList<>(List.of(side("below")));
      if (line.around().above().contains("band")) {
        first.add(side("above"));
      }
      return first;
    }
    List<Proposal> next = new ArrayList<>();
    next.add(met("above " + met.get()));
    next.add(met(met.get() + " to").withFilter(met.get()));
    return next;
  }

  private static Proposal met(String text) {
    return Proposal.of(
        text,
        Proposal.Kind.VALUE,
        "where the band above ends",
        "Each band begins where the one above it in the text ends.");
  }

  private Proposal side(String name) {
    return Proposal.of(name, Proposal.Kind.SETTING, "", setting(name).says());
  }

  /** The upper edge of the band above, as it is written. */
  private Optional<String> metEdge() {
    List<Item> items = line.around().previous();
    boolean isLowest = !items.isEmpty() && isWord(items.get(0), "below");
    Optional<Item.Amount> edge = Optional.empty();
    if (isLowest && items.size() > 1 && items.get(1) instanceof Item.Amount amount) {
      edge = Optional.of(amount);
    } else if (!items.isEmpty() && items.get(0) instanceof Item.Range range) {
      edge = Optional.of(range.high());
    }
    return edge.filter(amount -> amount.unit().isPresent())
        .map(amount -> amount.number() + " " + amount.unit().orElse(""));
  }

  private static boolean isWord(Item item, String text) {
    return item instanceof Item.Word word && word.text().equals(text);
  }

  private Setting setting(String name) {
    return catalogue.stage("band").flatMap(kind -> kind.setting(name)).orElseThrow();
  }

  private ValueProposals values(String name) {
    Optional<SourceKind> source = line.around().source().flatMap(catalogue::source);
    return new ValueProposals(
        "band", setting(name), List.of(), source, RangeRow.Direction.ANY, scope.sampleRate());
  }
}
