package chainwright.engine.rules;

import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.model.Step;
import java.util.List;
import java.util.OptionalDouble;

/** How much of the sum of parallel paths comes through a stage. */
final class PathShare {

  private PathShare() {}

  /**
   * Returns the share, from 0 to 1, by the gains of the paths; 1 for a stage that no path runs
   * beside. It is not known as long as the gain of a path beside it, or of its own, is unread.
   */
  static OptionalDouble of(StageElement stage, List<PathElement> elements) {
    OptionalDouble found = find(stage, elements);
    double share = found.orElse(1);
    return Double.isNaN(share) ? OptionalDouble.empty() : OptionalDouble.of(share);
  }

  /** The share; no number where it is not known. */
  private static OptionalDouble find(StageElement stage, List<PathElement> elements) {
    for (PathElement element : elements) {
      if (element == stage) {
        return OptionalDouble.of(1);
      }
      if (element instanceof SplitElement split) {
        for (PathBranch branch : split.branches()) {
          OptionalDouble inside = find(stage, branch.elements());
          if (inside.isPresent()) {
            return OptionalDouble.of(inside.getAsDouble() * share(split, branch));
          }
        }
      }
    }
    return OptionalDouble.empty();
  }

  private static double share(SplitElement split, PathBranch branch) {
    if (!(split.step() instanceof Step.Parallel)) {
      return 1;
    }
    double all = 0;
    for (PathBranch one : split.branches()) {
      all += one.branch().clauses().bypassed().isEmpty() ? factor(one) : 0;
    }
    return factor(branch) / Math.max(all, factor(branch));
  }

  private static double factor(PathBranch branch) {
    if (!branch.branch().settings().areFinished()) {
      return Double.NaN;
    }
    return Math.pow(10, branch.branch().settings().number("gain").orElse(0.0) / 20);
  }
}
