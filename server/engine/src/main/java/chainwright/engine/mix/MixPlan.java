package chainwright.engine.mix;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.PathSound;
import chainwright.notation.model.Definition;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * How a mix is made: which nodes there are, what each gets, and how long it waits.
 *
 * <p>All takes begin at the same time, that of their first frames. Everything that meets in a bus
 * is made equally late; a chain that listens to another waits until that is there. A chain has the
 * channels of its take, and a bus those of the widest sound that comes to it; a sound of one
 * channel becomes two where it is placed or spread. One that comes to a wider bus goes to the first
 * channels of it, and a single one to the first two, as it is.
 *
 * @param nodes the chains and buses that sound, each behind all that it hears; that which is meant
 *     last
 * @param missingKeys stages that listen to what does not sound
 */
public record MixPlan(List<MixNode> nodes, List<MissingKey> missingKeys) {

  /** The stages that make two channels of one. */
  private static final Set<String> STEREO = Set.of("pan", "width", "reverb");

  /**
   * A stage that listens to a chain or bus that makes no sound.
   *
   * @param stage the stage
   * @param key the name after {@code key}
   */
  public record MissingKey(StageElement stage, String key) {}

  /** Makes the path of a chain or bus sound. */
  @FunctionalInterface
  public interface Sounding {

    /**
     * Makes a path sound.
     *
     * @param path the path
     * @param isMono whether all its channels hold the same sound
     * @param latencyFrames how late the sound is when it comes to it [frames]
     * @return what processes its audio
     */
    PathSound of(SignalPath path, boolean isMono, int latencyFrames);
  }

  /**
   * Copies the lists.
   *
   * @param nodes the chains and buses
   * @param missingKeys stages that listen to what does not sound
   */
  public MixPlan {
    nodes = List.copyOf(nodes);
    missingKeys = List.copyOf(missingKeys);
  }

  /**
   * Plans a mix.
   *
   * @param order the chains and buses, without a circle
   * @param isFed whether that which is meant gets what goes to it
   * @param paths what happens in each, at the rate of the takes
   * @param takes the recordings, by the names of their chains
   * @param sounding makes paths sound
   * @return the plan; without a node if nothing sounds
   * @throws IllegalArgumentException if the order has a circle
   */
  public static MixPlan of(
      MixOrder order,
      boolean isFed,
      Function<Definition.Track, SignalPath> paths,
      Map<String, MixTake> takes,
      Sounding sounding) {
    if (!order.circle().isEmpty()) {
      throw new IllegalArgumentException("the order must have no circle, but had " + order);
    }
    Planning planning = new Planning(paths, takes, sounding);
    int last = order.tracks().size() - 1;
    for (int i = 0; i <= last; i++) {
      planning.add(order.tracks().get(i), isFed || i < last);
    }
    String target = order.tracks().get(last).name().text();
    return planning.indices.containsKey(target)
        ? new MixPlan(planning.nodes, planning.missing)
        : new MixPlan(List.of(), planning.missing);
  }

  /**
   * Returns what is meant.
   *
   * @return the last node
   */
  public MixNode target() {
    return nodes.get(nodes.size() - 1);
  }

  /**
   * Returns the stages that make no sound.
   *
   * @return those of every node
   */
  public List<StageElement> silentStages() {
    return nodes.stream().flatMap(node -> node.sound().silentStages().stream()).toList();
  }

  /**
   * Returns the takes that are heard in what is meant; those that are only listened to by detectors
   * are not among them.
   *
   * @return the nodes that have a take and a way to the last one, which may be itself
   */
  public List<MixNode> heardTakes() {
    boolean[] isHeard = new boolean[nodes.size()];
    isHeard[nodes.size() - 1] = true;
    List<MixNode> heard = new ArrayList<>();
    for (int i = nodes.size() - 1; i >= 0; i--) {
      if (isHeard[i]) {
        nodes.get(i).feeds().forEach(feed -> isHeard[feed.from()] = true);
        if (nodes.get(i).take().isPresent()) {
          heard.add(nodes.get(i));
        }
      }
    }
    return heard;
  }

  /**
   * Returns where the first part begins that is meant.
   *
   * @return the first frame of the earliest part of a take that is heard [frames]
   */
  public long startFrame() {
    return heardTakes().stream()
        .flatMap(node -> node.take().stream())
        .mapToLong(MixTake::fromFrame)
        .min()
        .orElse(0);
  }

  private static final class Planning {

    private final Function<Definition.Track, SignalPath> paths;
    private final Map<String, MixTake> takes;
    private final Sounding sounding;
    private final List<MixNode> nodes = new ArrayList<>();
    private final List<MissingKey> missing = new ArrayList<>();
    private final Map<String, Integer> indices = new HashMap<>();

    Planning(
        Function<Definition.Track, SignalPath> paths,
        Map<String, MixTake> takes,
        Sounding sounding) {
      this.paths = paths;
      this.takes = takes;
      this.sounding = sounding;
    }

    void add(Definition.Track track, boolean isFed) {
      String name = track.name().text();
      Optional<MixTake> take = Optional.ofNullable(takes.get(name));
      List<Integer> sources = new ArrayList<>();
      for (int i = 0; i < nodes.size(); i++) {
        if (isFed && track.isBus() && MixOrder.feeds(nodes.get(i).path().track(), name)) {
          sources.add(i);
        }
      }
      if (take.isEmpty() && sources.isEmpty()) {
        return;
      }
      SignalPath path = paths.apply(track);
      Map<String, Integer> keys = keys(path);
      int incoming =
          Math.max(
              take.map(MixTake::channelCount).orElse(0),
              sources.stream().mapToInt(i -> nodes.get(i).channelCount()).max().orElse(0));
      boolean isMono = incoming == 1;
      boolean isMadeStereo =
          isMono && path.stages().stream().anyMatch(stage -> STEREO.contains(stage.word()));
      int arrival = arrivalFrames(sources, keys);
      PathSound sound = sounding.of(path, isMono, arrival);
      indices.put(name, nodes.size());
      nodes.add(
          new MixNode(
              path,
              take,
              feeds(sources, name, arrival),
              keys,
              isMadeStereo ? 2 : incoming,
              sound,
              arrival,
              endFrame(take, sources, sound)));
    }

    private Map<String, Integer> keys(SignalPath path) {
      Map<String, Integer> keys = new LinkedHashMap<>();
      for (StageElement stage : path.stages()) {
        stage
            .key()
            .ifPresent(
                key -> {
                  Integer index = indices.get(key);
                  if (index == null) {
                    missing.add(new MissingKey(stage, key));
                  } else {
                    keys.put(key, index);
                  }
                });
      }
      return keys;
    }

    private int arrivalFrames(List<Integer> sources, Map<String, Integer> keys) {
      List<Integer> heard = new ArrayList<>(sources);
      heard.addAll(keys.values());
      return heard.stream().mapToInt(i -> nodes.get(i).latencyFrames()).max().orElse(0);
    }

    private List<MixFeed> feeds(List<Integer> sources, String bus, int arrivalFrames) {
      List<MixFeed> feeds = new ArrayList<>();
      for (int source : sources) {
        MixNode from = nodes.get(source);
        double factor = MixFeed.factor(from.path().track(), bus).orElse(0.0);
        feeds.add(new MixFeed(source, factor, arrivalFrames - from.latencyFrames()));
      }
      return feeds;
    }

    private long endFrame(Optional<MixTake> take, List<Integer> sources, PathSound sound) {
      long end = take.map(MixTake::endFrame).orElse(0L);
      for (int source : sources) {
        end = Math.max(end, nodes.get(source).endFrame());
      }
      return end + sound.tailFrames();
    }
  }
}
