package chainwright.app.cli;

import chainwright.app.plot.Plot;
import chainwright.app.plot.StepPlot;
import chainwright.app.view.DecayPlots;
import chainwright.app.view.DynamicsPlots;
import chainwright.app.view.Outline;
import chainwright.app.view.Part;
import chainwright.app.view.StagePlots;
import chainwright.app.view.StepPlots;
import chainwright.app.view.Unfinished;
import chainwright.dsp.dynamics.StaticCurve;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.HarmonicModel;
import chainwright.engine.stage.StageSound;
import java.io.IOException;
import java.util.Optional;

/**
 * What is plotted: a chain, or one line of it.
 *
 * @param outline the chain
 * @param part the line; empty for the whole chain
 */
record PlotSubject(Outline outline, Optional<Part> part) {

  SignalPath path() {
    return outline.path();
  }

  Optional<StageElement> stage() {
    return part.flatMap(Part::stage);
  }

  /**
   * Returns the axis that tells most.
   *
   * @return levels for a stage that reacts to level, harmonics for one that adds some, time for one
   *     that goes on after the sound, else frequencies
   */
  PlotAxis usualAxis() {
    Optional<StageSound> sound = stage().flatMap(StageElement::sound);
    if (sound.flatMap(StageSound::curve).isPresent()) {
      return PlotAxis.LEVEL;
    }
    if (sound.flatMap(StageSound::harmonics).isPresent()) {
      return PlotAxis.HARMONICS;
    }
    return sound.flatMap(StageSound::decay).isPresent() ? PlotAxis.TIME : PlotAxis.FREQUENCY;
  }

  /**
   * Draws it, as an editor shows it.
   *
   * @param axis what the plot runs over
   * @param tone the sine whose harmonics are meant
   * @return the plot
   * @throws IOException if the stage has no such curve
   */
  Plot draw(PlotAxis axis, Tone tone) throws IOException {
    return switch (axis) {
      case FREQUENCY -> frequencies();
      case LEVEL -> DynamicsPlots.level(sounding(), curve(), outline.nominal());
      case HARMONICS -> {
        harmonics();
        yield StagePlots.harmonics(sounding(), tone.hertz(), tone.levelDbfs());
      }
      case TIME -> {
        StageElement stage = sounding();
        yield DecayPlots.of(stage)
            .<Plot>map(plot -> plot)
            .or(() -> StepPlots.of(stage))
            .orElseThrow(this::timeless);
      }
    };
  }

  private Plot frequencies() throws IOException {
    if (part.isEmpty()) {
      String name = path().track().name().text();
      String title = path().track().title();
      return StagePlots.chain(title.isEmpty() ? name : name + ", " + title, path());
    }
    for (PathElement element : part.get().elements()) {
      if (element instanceof SplitElement split && !split.unread().isEmpty()) {
        throw new IOException(name() + " " + Unfinished.inWords(split) + "; `check` says more");
      }
    }
    return stage().isPresent()
        ? StagePlots.frequency(sounding(), part.get().response(), part.get().soFar())
        : StagePlots.part(part.get(), path());
  }

  /** How the gain of the stage follows a step. */
  StepPlot step() throws IOException {
    return StepPlots.of(sounding()).orElseThrow(this::timeless);
  }

  private IOException timeless() {
    return new IOException(name() + " has neither attack and release nor a decay");
  }

  /** The static curve of the stage. */
  StaticCurve curve() throws IOException {
    return sound().curve().orElseThrow(() -> new IOException(name() + " does not react to level"));
  }

  /** What the stage adds to a sine. */
  HarmonicModel harmonics() throws IOException {
    return sound().harmonics().orElseThrow(() -> new IOException(name() + " adds no harmonics"));
  }

  /** What the stage does. */
  StageSound sound() throws IOException {
    return sounding().sound().orElseThrow();
  }

  /** The stage, which can be computed. */
  StageElement sounding() throws IOException {
    if (stage().isEmpty()) {
      throw new IOException(
          part.isEmpty()
              ? "this axis shows one stage; name it by `--stage`"
              : "this axis shows one stage, but " + name() + " holds several; name one inside it");
    }
    StageElement stage = stage().get();
    if (stage.sound().isEmpty()) {
      throw new IOException(name() + " " + Unfinished.inWords(stage) + "; `check` says more");
    }
    return stage;
  }

  private String name() {
    return part.map(one -> one.number() + " `" + one.words() + "`").orElse("the chain");
  }
}
