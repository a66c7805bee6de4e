package chainwright.app.assist;

import chainwright.notation.model.Definition;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds what is understood of the settings on the caret's line, as it was read.
 *
 * @param text the text of the section
 * @param caret the offset of the caret in it
 */
record SettingsAt(String text, int caret) {

  /** Returns the settings on whose line a caret stands, or would if blanks ended it no sooner. */
  static Optional<Settings> find(Definition definition, int caret) {
    SettingsAt at = new SettingsAt(definition.section().text(), caret);
    if (definition instanceof Definition.Track track) {
      return at.in(track.steps());
    }
    return definition instanceof Definition.Preset preset
        ? at.in(preset.steps())
        : Optional.empty();
  }

  private Optional<Settings> in(List<Step> steps) {
    for (Step step : steps) {
      Optional<Settings> own = isOnLine(step) ? settings(step) : Optional.empty();
      if (own.isPresent()) {
        return own;
      }
      List<Step> inner = new ArrayList<>();
      step.branches().forEach(branch -> inner.addAll(branch.steps()));
      if (step instanceof Step.Stage stage) {
        inner.addAll(stage.sideChain());
      }
      Optional<Settings> within = in(inner);
      if (within.isPresent()) {
        return within;
      }
    }
    return Optional.empty();
  }

  private static Optional<Settings> settings(Step step) {
    if (step instanceof Step.Stage stage) {
      return Optional.of(stage.settings());
    }
    if (step instanceof Step.Insert insert) {
      return Optional.of(insert.settings());
    }
    return step instanceof Step.Multiband multiband
        ? Optional.of(multiband.settings())
        : Optional.empty();
  }

  /**
   * Whether nothing but blanks, or a mark that the line goes on, is between a step and the caret.
   */
  private boolean isOnLine(Step step) {
    if (step.lineSpan().isTouchedBy(caret)) {
      return true;
    }
    if (step.lineSpan().start() > caret) {
      return false;
    }
    String between = text.substring(step.lineSpan().end(), caret);
    String marks = between.strip();
    boolean isOneLine = between.chars().noneMatch(c -> c == '\n' || c == '\r');
    return isOneLine
        ? !between.contains("{") && !between.contains("}")
        : marks.startsWith("...") && marks.chars().noneMatch(c -> c == '\n' || c == '\r');
  }
}
