package chainwright.app.view;

import chainwright.dsp.dynamics.StaticCurve;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.sound.SoundBuilder;
import chainwright.engine.stage.DecayModel;
import chainwright.engine.stage.StageSound;
import chainwright.notation.lowering.NoteName;
import chainwright.quantity.Frequency;
import chainwright.quantity.NumberText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Says in one line of words and numbers what a stage does. */
public final class StageWords {

  private static final double INAUDIBLE_DB = 0.05;

  /** The octaves whose decay is said [Hz]: a low, a middle and a high one. */
  private static final List<Double> DECAY_HZ = List.of(125.0, 1000.0, 4000.0);

  /** The loss from which on a declared lowest note is judged by `corner-inside-fundamentals`. */
  private static final double JUDGED_IF_DECLARED_DB = -1.5;

  private static final String WHY_NOT_JUDGED =
      " (few recordings reach it: judged from 6 dB on, or from 1.5 dB with a `lowest-note`)";

  private StageWords() {}

  /**
   * Says what a stage does.
   *
   * @param stage the stage
   * @param nominal the level at which dynamics and saturation are read
   * @return such as "−3.0 dB at 66 Hz, 18 dB/oct, −0.4 dB at the lowest note E2"
   */
  public static String of(StageElement stage, Nominal nominal) {
    if (stage.sound().isEmpty()) {
      return Unfinished.inWords(stage);
    }
    StageSound sound = stage.sound().get();
    List<String> parts = new ArrayList<>();
    if (sound.curve().isPresent()) {
      dynamics(stage, sound.curve().get(), nominal, parts);
    } else if (sound.harmonics().isPresent()) {
      double thd = StagePlots.harmonics(stage, nominal.levelDbfs()).totalDistortionPercent();
      parts.add(NumberText.format(thd, 2) + " % harmonic distortion at " + nominal.level());
    } else if (sound.decay().isPresent()) {
      decay(stage, sound.decay().get(), parts);
    } else {
      filter(stage, sound.response(), parts);
    }
    double latencySeconds = SoundBuilder.latencySeconds(Optional.empty(), List.of(stage));
    if (latencySeconds > 0) {
      parts.add("latency " + Readings.time(latencySeconds));
    }
    return parts.isEmpty() ? stage.stage().kind().says() : String.join(", ", parts);
  }

  private static void decay(StageElement stage, DecayModel decay, List<String> parts) {
    double nyquistHz = stage.context().rate().nyquist().hertz();
    List<String> times = new ArrayList<>();
    for (double hertz : DECAY_HZ) {
      if (hertz < nyquistHz) {
        times.add(
            Readings.time(decay.secondsAt(hertz)) + " at " + Frequency.ofHertz(hertz).toString());
      }
    }
    parts.add("falls by 60 dB in " + String.join(", ", times));
  }

  private static void filter(StageElement stage, Response response, List<String> parts) {
    for (String name : List.of("cutoff", "centre", "frequency", "pivot")) {
      Optional<Double> hertz = stage.context().settings().number(name);
      if (hertz.isPresent() && hertz.get() > 0) {
        parts.add(
            Readings.gainAt(response.decibelsAt(hertz.get()), Frequency.ofHertz(hertz.get())));
      }
    }
    stage.context().settings().value("slope").ifPresent(slope -> parts.add(slope.toString()));
    boolean hasPlace = !parts.isEmpty();
    if (parts.isEmpty()) {
      double middle = response.decibelsAt(1000);
      if (Math.abs(middle) >= INAUDIBLE_DB) {
        parts.add(Readings.gain(middle));
      }
    }
    if (stage.context().lowestHz().isPresent()) {
      double lowest = stage.context().lowestHz().getAsDouble();
      double loss = response.decibelsAt(lowest);
      // Where the whole is turned up or down, the lowest note is no news.
      boolean isNews = hasPlace || Math.abs(loss - response.decibelsAt(1000)) >= INAUDIBLE_DB;
      if (isNews && Math.abs(loss) >= INAUDIBLE_DB && Double.isFinite(loss)) {
        parts.add(Readings.gain(loss) + " at the " + lowestNote(stage, lowest, loss));
      }
    }
  }

  /** Names the lowest note, and says why a loss at one that nobody has declared is not judged. */
  private static String lowestNote(StageElement stage, double lowestHz, double lossDb) {
    boolean isUsual =
        stage
            .context()
            .source()
            .filter(kind -> kind.lowestHz().equals(OptionalDouble.of(lowestHz)))
            .isPresent();
    String note = "lowest note " + NoteName.nearest(lowestHz);
    if (!isUsual) {
      return note;
    }
    return "usual " + note + (lossDb <= JUDGED_IF_DECLARED_DB ? WHY_NOT_JUDGED : "");
  }

  private static void dynamics(
      StageElement stage, StaticCurve curve, Nominal nominal, List<String> parts) {
    double reduction = curve.gainReductionDb(nominal.levelDbfs());
    parts.add(NumberText.format(reduction, 1) + " dB of gain reduction at " + nominal.level());
    stage
        .context()
        .settings()
        .value("ratio")
        .ifPresent(
            ratio ->
                stage
                    .context()
                    .settings()
                    .value("threshold")
                    .ifPresent(threshold -> parts.add(ratio + " from " + threshold)));
    stage
        .context()
        .settings()
        .number("knee")
        .filter(kneeDb -> kneeDb > 0)
        .ifPresent(kneeDb -> parts.add("knee " + NumberText.format(kneeDb, 1) + " dB"));
  }
}
