package chainwright.app.cli;

import chainwright.app.view.Outline;
import chainwright.app.view.Part;
import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.dsp.signal.SumDesign;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.PathSelection;
import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.PathSound;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.model.Value;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Makes the chosen part of a chain sound.
 *
 * @param opened where the chain is written
 * @param outline the chain, at the rate of the take
 * @param isMono whether the take has one channel
 */
record RenderChoice(OpenedChain opened, Outline outline, boolean isMono) {

  /** The stages that make two channels of one. */
  private static final Set<String> STEREO = Set.of("pan", "width", "reverb");

  /** Which of the lines are meant, and how. */
  enum Way {
    WHOLE,
    ONLY,
    WITHOUT,
    DIFFERENCE
  }

  /**
   * Asks whether a take of one channel must become two.
   *
   * @return whether the chain places or spreads the sound
   */
  boolean isMadeStereo() {
    return isMono && outline.path().stages().stream().anyMatch(one -> STEREO.contains(one.word()));
  }

  /**
   * Makes it sound.
   *
   * @param way which lines are meant
   * @param names their labels or numbers
   * @return what processes the take
   * @throws IOException if there is no such line, or something does not sound yet
   */
  ProcessorDesign design(Way way, List<String> names) throws IOException {
    SignalPath whole = outline.path();
    if (way == Way.WHOLE) {
      return sound(whole);
    }
    PathSelection selection = selection(names);
    return switch (way) {
      case WHOLE -> sound(whole);
      case ONLY -> sound(selection.only(whole));
      case WITHOUT -> sound(selection.without(whole));
      case DIFFERENCE ->
          new SumDesign(
              List.of(
                  sound(whole),
                  new SeriesDesign(
                      List.of(sound(selection.without(whole)), new FactorDesign(-1)))));
    };
  }

  private PathSelection selection(List<String> names) throws IOException {
    List<PathElement> chosen = new ArrayList<>();
    for (String name : names) {
      Part part = PlotChoice.part(outline, name);
      String shown = part.number() + " `" + part.words() + "`";
      if (part.isBypassed()) {
        throw new IOException(shown + " is bypassed and makes no sound; take the word off first");
      }
      if (part.elements().isEmpty()
          || !PathSelection.of(part.elements()).isWithin(outline.path())) {
        throw new IOException(
            shown
                + " is no stage on the way of the sound; name a stage, a preset or a whole block");
      }
      chosen.addAll(part.elements());
    }
    return PathSelection.of(chosen);
  }

  private ProcessorDesign sound(SignalPath path) throws IOException {
    List<StageElement> keyed =
        path.stages().stream()
            .filter(
                stage ->
                    stage
                        .context()
                        .settings()
                        .value("key")
                        .filter(Value.Reference.class::isInstance)
                        .isPresent())
            .toList();
    refuse(keyed, "listens to another chain by `key`, and only one chain is rendered so far");
    PathSound sound = SoundBuilder.build(path, isMono);
    refuse(
        sound.silentStages(), "makes no sound yet, or not with these settings at this sample rate");
    return sound.processor();
  }

  private void refuse(List<StageElement> stages, String why) throws IOException {
    if (!stages.isEmpty()) {
      throw new IOException(
          "nothing was rendered, since not everything written would be heard; leave these out by"
              + " `--without`, or bypass them:\n"
              + stages.stream()
                  .map(stage -> "  " + opened.line(stage.shownAt()) + stage.word() + " " + why)
                  .collect(Collectors.joining("\n")));
    }
  }
}
