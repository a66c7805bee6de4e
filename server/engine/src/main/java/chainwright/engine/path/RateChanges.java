package chainwright.engine.path;

import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.SampleRateConversion;
import java.util.ArrayList;
import java.util.List;

/** Where a path changes the sample rate, and where it cannot. */
public final class RateChanges {

  private RateChanges() {}

  /**
   * A stage behind a conversion that listens to what has the rate before it.
   *
   * @param change the conversion
   * @param listener the stage
   * @param key the name that it listens to
   */
  public record Keyed(StageElement change, StageElement listener, String key) {}

  /**
   * Returns the conversions that change the rate of what comes behind them.
   *
   * @param path the path
   * @return those on the way of the whole signal, in order
   */
  public static List<StageElement> effective(SignalPath path) {
    List<StageElement> found = new ArrayList<>();
    for (PathElement element : path.elements()) {
      if (element instanceof StageElement stage && stage.rateChange().isPresent()) {
        found.add(stage);
      }
    }
    return found;
  }

  /**
   * Returns the conversions that cannot be: inside a structure or a side chain everything has one
   * rate.
   *
   * @param path the path
   * @return them, in order
   */
  public static List<StageElement> enclosed(SignalPath path) {
    List<StageElement> found = new ArrayList<>();
    collect(path.elements(), false, found);
    return found;
  }

  private static void collect(
      List<PathElement> elements, boolean isEnclosed, List<StageElement> into) {
    for (PathElement element : elements) {
      if (element.isBypassed()) {
        continue;
      }
      if (element instanceof StageElement stage) {
        if (isEnclosed && stage.word().equals(SampleRateConversion.WORD) && stage.isFinished()) {
          into.add(stage);
        }
        collect(stage.sideChain(), true, into);
      } else {
        ((SplitElement) element)
            .branches()
            .forEach(branch -> collect(branch.elements(), true, into));
      }
    }
  }

  /**
   * Returns the stages behind a conversion that listen to another chain or bus, which has the rate
   * before it.
   *
   * @param path the path
   * @return them, in order
   */
  public static List<Keyed> keyed(SignalPath path) {
    List<Keyed> found = new ArrayList<>();
    StageElement change = null;
    for (PathElement element : path.elements()) {
      if (change != null) {
        for (StageElement stage : stages(element)) {
          StageElement before = change;
          stage.key().ifPresent(key -> found.add(new Keyed(before, stage, key)));
        }
      }
      if (element instanceof StageElement stage && stage.rateChange().isPresent()) {
        change = stage;
      }
    }
    return found;
  }

  private static List<StageElement> stages(PathElement element) {
    if (element.isBypassed()) {
      return List.of();
    }
    if (element instanceof StageElement stage) {
      return List.of(stage);
    }
    return ((SplitElement) element)
        .branches().stream()
            .flatMap(branch -> branch.elements().stream())
            .flatMap(inner -> stages(inner).stream())
            .toList();
  }
}
