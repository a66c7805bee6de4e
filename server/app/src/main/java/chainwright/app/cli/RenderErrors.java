package chainwright.app.cli;

import chainwright.engine.mix.MixOrder;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Lowered;
import chainwright.notation.model.Step;
import chainwright.notation.project.Scope;
import chainwright.notation.project.SourceFile;
import java.io.IOException;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Refuses what cannot be heard as written, since its text has errors; errors elsewhere may stay.
 */
final class RenderErrors {

  private final Scope scope;
  private final Set<Definition> heard = Collections.newSetFromMap(new IdentityHashMap<>());
  private boolean isPresetMissing;

  private RenderErrors(Scope scope) {
    this.scope = scope;
  }

  /**
   * Refuses errors in the chains and buses that are heard, the presets that they apply and the
   * session; where a bus is fed, also in what is no definition and might have been a chain of it.
   *
   * @param subject what is meant
   * @param order the chains and buses
   * @throws IOException if there is one
   */
  static void refuse(RenderSubject subject, MixOrder order) throws IOException {
    RenderErrors errors = new RenderErrors(subject.scope());
    order.tracks().forEach(errors::add);
    subject.scope().session().ifPresent(errors.heard::add);
    if (errors.isPresetMissing || errors.isErroneous(subject.isFed())) {
      throw new IOException(
          "the text has errors, so that not everything written would be heard; see `chainwright"
              + " check "
              + subject.opened().file()
              + "`");
    }
  }

  private void add(Definition.Track track) {
    heard.add(track);
    addPresets(track.steps());
  }

  private void addPresets(List<Step> steps) {
    for (Step step : steps) {
      if (step instanceof Step.Apply apply) {
        Optional<Definition.Preset> preset = scope.preset(apply.preset().text());
        isPresetMissing |= preset.isEmpty();
        if (preset.isPresent() && heard.add(preset.get())) {
          addPresets(preset.get().steps());
        }
      } else if (step instanceof Step.Stage stage) {
        addPresets(stage.sideChain());
      }
      for (Branch branch : step.branches()) {
        addPresets(branch.steps());
      }
    }
  }

  private boolean isErroneous(boolean countsNameless) {
    return scope.files().stream()
        .map(SourceFile::sections)
        .flatMap(List::stream)
        .filter(section -> section.definition().map(heard::contains).orElse(countsNameless))
        .map(Lowered::findings)
        .flatMap(List::stream)
        .anyMatch(finding -> finding.severity() == Severity.ERROR);
  }
}
