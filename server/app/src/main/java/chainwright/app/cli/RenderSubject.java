package chainwright.app.cli;

import chainwright.app.view.Outline;
import chainwright.app.view.Part;
import chainwright.engine.mix.MixOrder;
import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What is to be rendered, as written: a chain, a bus with all that comes to it, or a bus by itself.
 *
 * @param opened the chain or bus
 * @param isFed whether it gets what goes to it
 * @param rate the sample rate that everything runs at
 * @param outlines the chains and buses that have been asked for, by name
 */
record RenderSubject(
    OpenedChain opened, boolean isFed, SampleRate rate, Map<String, Outline> outlines) {

  private static final String MIX = "mix";

  /**
   * Finds it.
   *
   * @param file the file
   * @param chain the name of the chain or bus; null for the only one, or else the mix bus
   * @param isTakeGiven whether the command line names a recording, which only one chain can get
   * @return it, at the rate of the session
   * @throws IOException if there is no such chain, or it is not clear which one is meant
   */
  static RenderSubject of(Path file, @Nullable String chain, boolean isTakeGiven)
      throws IOException {
    String name = chain == null && !isTakeGiven ? mixBus(OpenedChain.all(file)) : chain;
    OpenedChain opened = OpenedChain.open(file, name);
    return new RenderSubject(
        opened,
        opened.outline().path().track().isBus() && !isTakeGiven,
        opened.scope().sampleRate(),
        new HashMap<>());
  }

  /** The bus that is called the mix, or the only one that goes nowhere; null if there is none. */
  private static @Nullable String mixBus(List<OpenedChain> all) {
    List<String> ends =
        all.stream()
            .map(one -> one.outline().path().track())
            .filter(track -> track.isBus() && track.declarations().routes().isEmpty())
            .map(track -> track.name().text())
            .toList();
    return ends.contains(MIX) ? MIX : ends.size() == 1 ? ends.get(0) : null;
  }

  /** Returns the same at another rate. */
  RenderSubject at(SampleRate other) {
    return new RenderSubject(opened, isFed, other, new HashMap<>());
  }

  Definition.Track track() {
    return opened.outline().path().track();
  }

  DeclaredLevels declared() {
    return DeclaredLevels.of(track().declarations());
  }

  Scope scope() {
    return opened.scope();
  }

  /** Returns the lines of a chain or bus. */
  Outline outline(Definition.Track one) {
    return outlines.computeIfAbsent(
        one.name().text(), name -> Outline.of(one, new PathBuilder(scope(), rate)));
  }

  /** Returns all that is to be heard, each behind what it hears. */
  MixOrder order(RenderChoice choice) throws IOException {
    MixOrder order = MixOrder.of(scope(), track(), isFed, one -> path(one, choice));
    if (!order.circle().isEmpty()) {
      throw new IOException(
          "`"
              + order.circle().get(0)
              + "` hears itself: `"
              + String.join("` to `", order.circle())
              + "`; remove one of these ways, or the `key` that is one");
    }
    return order;
  }

  /** Returns what happens in a chain or bus, of the one that is meant what is chosen. */
  SignalPath path(Definition.Track one, RenderChoice choice) {
    return isMeant(one) ? choice.path() : outline(one).path();
  }

  /** Asks whether a chain or bus is the one that is meant; a name has one. */
  boolean isMeant(Definition.Track one) {
    return one.name().text().equals(track().name().text());
  }

  /** Says on which line a structure stands. */
  String line(SplitElement split) {
    return opened.line(split.appliedAt().orElse(split.place()));
  }

  /** Says where a stage stands: the chain where there are several, its number and its line. */
  String where(StageElement stage) {
    for (Map.Entry<String, Outline> entry : outlines.entrySet()) {
      Optional<Part> part =
          entry.getValue().all().stream()
              .filter(one -> one.stage().filter(stage::equals).isPresent())
              .findFirst();
      if (part.isPresent()) {
        String chain = entry.getKey().equals(track().name().text()) ? "" : entry.getKey() + " ";
        return chain + "stage " + part.get().number() + ", " + opened.line(stage.shownAt());
      }
    }
    return opened.line(stage.shownAt());
  }
}
