package chainwright.engine.mix;

import chainwright.engine.path.SignalPath;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/**
 * The chains and buses that a sound is made of, each behind all that it hears: what goes to it, by
 * {@code to} and {@code send}, and what its detectors listen to, by {@code key}.
 *
 * @param tracks the chains and buses, that which is meant last
 * @param circle the names along a way that comes back to its start, such as "a", "b", "a"; empty if
 *     there is none, and if there is one the order is not to be used
 */
public record MixOrder(List<Definition.Track> tracks, List<String> circle) {

  /**
   * Copies the lists.
   *
   * @param tracks the chains and buses
   * @param circle the names along a circle
   */
  public MixOrder {
    tracks = List.copyOf(tracks);
    circle = List.copyOf(circle);
  }

  /**
   * Finds the order.
   *
   * @param scope what the names mean
   * @param target the chain or bus that is meant
   * @param isFed whether it gets what goes to it; else it stands for itself, with a recording
   * @param paths what happens in each chain and bus
   * @return the order
   */
  public static MixOrder of(
      Scope scope,
      Definition.Track target,
      boolean isFed,
      Function<Definition.Track, SignalPath> paths) {
    Search search = new Search(scope, isFed ? "" : target.name().text(), paths);
    search.visit(target);
    return new MixOrder(search.found, search.circle);
  }

  /** The names after {@code key} of the stages that are not bypassed. */
  private static List<String> keys(SignalPath path) {
    return path.stages().stream().flatMap(stage -> stage.key().stream()).distinct().toList();
  }

  /**
   * Asks whether a chain or bus is fed by another.
   *
   * @param from the one
   * @param bus the name of the other
   * @return whether a route or a send goes there
   */
  static boolean feeds(Definition.Track from, String bus) {
    return from.declarations().routes().stream().anyMatch(route -> route.bus().text().equals(bus))
        || from.declarations().sends().stream().anyMatch(send -> send.bus().text().equals(bus));
  }

  private static final class Search {

    private final Scope scope;
    private final String unfed;
    private final Function<Definition.Track, SignalPath> paths;
    private final List<Definition.Track> found = new ArrayList<>();
    private final Set<String> done = new HashSet<>();
    private final List<String> open = new ArrayList<>();
    private List<String> circle = List.of();

    Search(Scope scope, String unfed, Function<Definition.Track, SignalPath> paths) {
      this.scope = scope;
      this.unfed = unfed;
      this.paths = paths;
    }

    void visit(Definition.Track track) {
      String name = track.name().text();
      if (open.contains(name)) {
        List<String> way = new ArrayList<>(open.subList(open.indexOf(name), open.size()));
        way.add(name);
        circle = way;
      } else if (!done.contains(name)) {
        open.add(name);
        heardBy(track).forEach(this::visit);
        open.remove(open.size() - 1);
        done.add(name);
        found.add(track);
      }
    }

    private List<Definition.Track> heardBy(Definition.Track track) {
      String name = track.name().text();
      List<Definition.Track> heard = new ArrayList<>();
      if (track.isBus() && !name.equals(unfed)) {
        scope.tracks().stream().filter(one -> feeds(one, name)).forEach(heard::add);
      }
      keys(paths.apply(track)).stream()
          .flatMap(key -> scope.track(key).stream())
          .forEach(heard::add);
      return heard;
    }
  }
}
