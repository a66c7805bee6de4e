package chainwright.engine.rules;

import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.engine.path.Paths;
import chainwright.engine.path.SignalPath;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a rule may know about a chain or a bus: its path, the buses after it, and what the names
 * mean. It comes from the text alone; where a recording would decide, the declared source and its
 * worst case stand in, and the finding says so.
 *
 * @param path the path of the chain or bus
 * @param scope what the names mean
 * @param paths the paths of other chains and buses
 * @param catalogue the trade's knowledge
 */
public record Evidence(SignalPath path, Scope scope, Paths paths, Catalogue catalogue) {

  /**
   * Returns the chain or bus.
   *
   * @return as written
   */
  public Definition.Track track() {
    return path.track();
  }

  /**
   * Returns the paths of the buses that the signal passes after this chain, nearest first, by its
   * first route; a loop ends it.
   *
   * @return the paths, without that of the chain itself
   */
  public List<SignalPath> busesAfter() {
    List<SignalPath> after = new ArrayList<>();
    Set<String> seen = new LinkedHashSet<>();
    seen.add(track().name().text());
    Definition.Track at = track();
    while (!at.declarations().routes().isEmpty()) {
      Declarations.Route route = at.declarations().routes().get(0);
      Optional<Definition.Track> bus = scope.track(route.bus().text());
      if (bus.isEmpty() || !seen.add(bus.get().name().text())) {
        break;
      }
      at = bus.get();
      after.add(paths.of(at));
    }
    return after;
  }

  /**
   * Returns what the chain and all buses after it do to each frequency.
   *
   * @return the response
   */
  public Response responseToOutput() {
    List<Response> parts = new ArrayList<>();
    parts.add(path.response());
    busesAfter().forEach(bus -> parts.add(bus.response()));
    return new ResponseProduct(parts);
  }

  /**
   * Returns how the source is called in a sentence.
   *
   * @return such as "a lead vocal"; "this source" if none is declared
   */
  public String sourceInWords() {
    return path.source()
        .filter(kind -> !kind.isUnknown())
        .map(kind -> "the " + kind.inWords())
        .orElse("this source");
  }

  /**
   * Makes a finding with the rule's own reason and sources.
   *
   * @param card the rule's card
   * @param place the tightest span at fault
   * @param what what is the case, with the values found
   * @param remedy what to do, likeliest first
   * @param related other places that have a part in it
   * @param fixes edits that mend it
   * @return the finding
   */
  public Finding finding(
      RuleCard card,
      Place place,
      String what,
      String remedy,
      List<Finding.Related> related,
      List<Fix> fixes) {
    return finding(card, card.severity(), place, what, remedy, related, fixes);
  }

  /**
   * Makes a finding that is more or less grave than the rule's card says.
   *
   * @param card the rule's card
   * @param severity how grave it is
   * @param place the tightest span at fault
   * @param what what is the case, with the values found
   * @param remedy what to do, likeliest first
   * @param related other places that have a part in it
   * @param fixes edits that mend it
   * @return the finding
   */
  public Finding finding(
      RuleCard card,
      Severity severity,
      Place place,
      String what,
      String remedy,
      List<Finding.Related> related,
      List<Fix> fixes) {
    return new Finding(
        card.code(),
        severity,
        place,
        what,
        card.why(),
        remedy,
        cite(card.sources()),
        card.code(),
        related,
        fixes);
  }

  /**
   * Spells the citations of some keys for a reader.
   *
   * @param keys the keys, such as "SEN"
   * @return the citations with the way they are known
   */
  public List<String> cite(List<String> keys) {
    return keys.stream()
        .map(key -> catalogue.citation(key).map(Citation::spelt).orElse(key))
        .toList();
  }
}
