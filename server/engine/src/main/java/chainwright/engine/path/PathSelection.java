package chainwright.engine.path;

import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/**
 * Some elements of a path, with which it is to sound alone or without which it is to sound; what is
 * left out is bypassed.
 *
 * <p>The responses of structures that hold something left out are those of the whole structure:
 * what comes out is for processing audio, not for plotting.
 */
public final class PathSelection {

  private final Set<PathElement> chosen = Collections.newSetFromMap(new IdentityHashMap<>());

  private PathSelection(Collection<PathElement> chosen) {
    this.chosen.addAll(chosen);
  }

  /**
   * Chooses elements.
   *
   * @param elements elements of a path, at any depth; each is known by its identity
   * @return the choice
   */
  public static PathSelection of(Collection<PathElement> elements) {
    return new PathSelection(elements);
  }

  /**
   * Asks whether a path holds all that is chosen.
   *
   * @param path the path
   * @return whether each element that is chosen stands in it, side chains not counted
   */
  public boolean isWithin(SignalPath path) {
    Set<PathElement> missing = Collections.newSetFromMap(new IdentityHashMap<>());
    missing.addAll(chosen);
    strike(path.elements(), missing);
    return missing.isEmpty();
  }

  private static void strike(List<PathElement> elements, Set<PathElement> missing) {
    for (PathElement element : elements) {
      missing.remove(element);
      if (element instanceof SplitElement split) {
        split.branches().forEach(branch -> strike(branch.elements(), missing));
      }
    }
  }

  /**
   * Returns a path in which everything is bypassed but the choice, the structures around it, and
   * the changes of the sample rate, for which the stages behind them are designed.
   *
   * @param path the path
   * @return the path; what is bypassed in the text stays so
   */
  public SignalPath only(SignalPath path) {
    return path.withElements(path.elements().stream().map(this::only).toList());
  }

  /**
   * Returns a path in which the choice is bypassed.
   *
   * @param path the path
   * @return the path
   */
  public SignalPath without(SignalPath path) {
    return path.withElements(path.elements().stream().map(this::without).toList());
  }

  private PathElement only(PathElement element) {
    if (chosen.contains(element) || changesRate(element)) {
      return element;
    }
    if (element instanceof SplitElement split && holdsChosen(split)) {
      return split.withBranches(
          split.branches().stream()
              .map(branch -> with(branch, branch.elements().stream().map(this::only).toList()))
              .toList());
    }
    return element.asBypassed();
  }

  private static boolean changesRate(PathElement element) {
    return element instanceof StageElement stage && stage.rateChange().isPresent();
  }

  private PathElement without(PathElement element) {
    if (chosen.contains(element)) {
      return element.asBypassed();
    }
    if (element instanceof StageElement) {
      return element;
    }
    SplitElement split = (SplitElement) element;
    return split.withBranches(
        split.branches().stream()
            .map(branch -> with(branch, branch.elements().stream().map(this::without).toList()))
            .toList());
  }

  private boolean holdsChosen(SplitElement split) {
    return split.branches().stream()
        .flatMap(branch -> branch.elements().stream())
        .anyMatch(
            inner ->
                chosen.contains(inner)
                    || (inner instanceof SplitElement deeper && holdsChosen(deeper)));
  }

  private static PathBranch with(PathBranch branch, List<PathElement> elements) {
    return new PathBranch(branch.branch(), elements, branch.response());
  }
}
