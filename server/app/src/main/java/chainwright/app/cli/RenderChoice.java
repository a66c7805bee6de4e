package chainwright.app.cli;

import chainwright.app.view.Outline;
import chainwright.app.view.Part;
import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.dsp.signal.SumDesign;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathSelection;
import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.PathSound;
import chainwright.engine.sound.SoundBuilder;
import chainwright.engine.sound.StageTap;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Which stages of a chain are to be heard, and how.
 *
 * @param way how
 * @param whole all of the chain
 * @param path what is heard of it; for a difference, all
 * @param without the chain without them, for a difference; else the path
 */
record RenderChoice(Way way, SignalPath whole, SignalPath path, SignalPath without) {

  /** Which of the stages are meant, and how. */
  enum Way {
    WHOLE,
    ONLY,
    WITHOUT,
    DIFFERENCE
  }

  /**
   * Chooses.
   *
   * @param outline the chain
   * @param way how the stages are meant
   * @param names their labels or numbers
   * @return the choice
   * @throws IOException if there is no such stage
   */
  static RenderChoice of(Outline outline, Way way, List<String> names) throws IOException {
    SignalPath whole = outline.path();
    if (way == Way.WHOLE) {
      return new RenderChoice(way, whole, whole, whole);
    }
    PathSelection selection = selection(outline, way, names);
    if (way == Way.DIFFERENCE && isProcessedAtAnotherRate(whole)) {
      throw new IOException(
          "there is no difference of a chain with stages behind a change of the sample rate; move"
              + " the `sample-rate-conversion` behind them, or leave it out and render with"
              + " `--rate`");
    }
    SignalPath without = selection.without(whole);
    SignalPath path =
        switch (way) {
          case WHOLE, DIFFERENCE -> whole;
          case ONLY -> selection.only(whole);
          case WITHOUT -> without;
        };
    return new RenderChoice(way, whole, path, without);
  }

  private static PathSelection selection(Outline outline, Way way, List<String> names)
      throws IOException {
    List<PathElement> chosen = new ArrayList<>();
    for (String name : names) {
      Part part = PlotChoice.part(outline, name);
      String shown = "stage " + part.number() + " `" + part.words() + "`";
      if (part.isBypassed()) {
        throw new IOException(shown + " is bypassed and makes no sound; take the word off first");
      }
      if (part.elements().isEmpty()
          || !PathSelection.of(part.elements()).isWithin(outline.path())) {
        throw new IOException(
            shown + " is not on the way of the sound; name a stage, a preset or a whole block");
      }
      if (way != Way.ONLY && part.elements().stream().anyMatch(RenderChoice::changesRate)) {
        throw new IOException(
            shown
                + " changes the sample rate that what stands behind it is designed for, so it cannot"
                + " be left out; take it out of the text, and render with `--rate`");
      }
      chosen.addAll(part.elements());
    }
    return PathSelection.of(chosen);
  }

  /** A dither alone makes no difference worth hearing. */
  private static boolean isProcessedAtAnotherRate(SignalPath path) {
    boolean isBehind = false;
    for (PathElement element : path.elements()) {
      boolean isDither =
          element instanceof PathElement.StageElement stage && stage.word().equals("dither");
      if (isBehind && !element.isBypassed() && !isDither && !changesRate(element)) {
        return true;
      }
      isBehind |= changesRate(element);
    }
    return false;
  }

  private static boolean changesRate(PathElement element) {
    return element instanceof PathElement.StageElement stage && stage.rateChange().isPresent();
  }

  /**
   * Makes it sound.
   *
   * @param isMono whether all channels hold the same sound
   * @param latencyFrames how late the sound comes [frames]
   * @param tap listens to the stages
   * @return what processes its audio; of a difference at a changed rate, without the dither
   */
  PathSound sound(boolean isMono, int latencyFrames, StageTap tap) {
    PathSound all = SoundBuilder.build(path, isMono, latencyFrames, tap);
    if (way != Way.DIFFERENCE) {
      return all;
    }
    PathSound rest = SoundBuilder.build(without, isMono, latencyFrames, StageTap.NONE);
    return new PathSound(
        new SumDesign(
            List.of(
                all.processor(),
                new SeriesDesign(List.of(rest.processor(), new FactorDesign(-1))))),
        all.legs(),
        new SeriesDesign(List.of()),
        all.silentStages());
  }
}
