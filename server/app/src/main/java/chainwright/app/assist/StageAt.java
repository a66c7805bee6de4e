package chainwright.app.assist;

import chainwright.notation.model.Branch;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Step;
import java.util.List;
import java.util.Optional;

/** Finds the stage on whose line a place lies, as it was read. */
final class StageAt {

  private StageAt() {}

  /** Returns the stage whose own line is touched; empty anywhere else. */
  static Optional<Step.Stage> find(Definition definition, int offset) {
    if (definition instanceof Definition.Track track) {
      return find(track.steps(), offset);
    }
    return definition instanceof Definition.Preset preset
        ? find(preset.steps(), offset)
        : Optional.empty();
  }

  private static Optional<Step.Stage> find(List<Step> steps, int offset) {
    for (Step step : steps) {
      if (step.span().isTouchedBy(offset)) {
        Optional<Step.Stage> found = in(step, offset);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<Step.Stage> in(Step step, int offset) {
    if (step instanceof Step.Stage stage) {
      return stage.lineSpan().isTouchedBy(offset)
          ? Optional.of(stage)
          : find(stage.sideChain(), offset);
    }
    for (Branch branch : step.branches()) {
      Optional<Step.Stage> found = find(branch.steps(), offset);
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }
}
