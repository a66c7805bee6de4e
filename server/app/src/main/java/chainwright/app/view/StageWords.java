package chainwright.app.view;

import chainwright.dsp.dynamics.StaticCurve;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageSound;
import chainwright.notation.lowering.NoteName;
import chainwright.quantity.Frequency;
import chainwright.quantity.NumberText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Says in one line of words and numbers what a stage does. */
public final class StageWords {

  private static final double INAUDIBLE_DB = 0.05;

  private StageWords() {}

  /**
   * Says what a stage does.
   *
   * @param stage the stage
   * @return such as "−3.0 dB at 66 Hz, 18 dB/oct, −0.4 dB at the lowest note E2"
   */
  public static String of(StageElement stage) {
    if (stage.sound().isEmpty()) {
      return "cannot be computed as it is written";
    }
    StageSound sound = stage.sound().get();
    List<String> parts = new ArrayList<>();
    if (sound.curve().isPresent()) {
      dynamics(stage, sound.curve().get(), parts);
    } else if (sound.harmonics().isPresent()) {
      double thd = StagePlots.harmonics(stage, StagePlots.NOMINAL_DBFS).totalDistortionPercent();
      parts.add(
          NumberText.format(thd, 2)
              + " % harmonic distortion at "
              + sign(StagePlots.NOMINAL_DBFS)
              + " dBFS");
    } else {
      filter(stage, sound.response(), parts);
    }
    if (sound.latencySeconds() > 0) {
      parts.add("latency " + NumberText.format(sound.latencySeconds() * 1000, 2) + " ms");
    }
    return parts.isEmpty() ? stage.stage().kind().says() : String.join(", ", parts);
  }

  /**
   * Spells a gain at a frequency.
   *
   * @param decibels the gain [dB]
   * @param hertz the frequency [Hz]
   * @return such as "−3.0 dB at 66 Hz"
   */
  public static String at(double decibels, double hertz) {
    return decibels(decibels) + " at " + Frequency.ofHertz(hertz);
  }

  private static void filter(StageElement stage, Response response, List<String> parts) {
    for (String name : List.of("cutoff", "centre", "frequency", "pivot")) {
      Optional<Double> hertz = stage.context().settings().number(name);
      if (hertz.isPresent() && hertz.get() > 0) {
        parts.add(at(response.decibelsAt(hertz.get()), hertz.get()));
      }
    }
    stage.context().settings().value("slope").ifPresent(slope -> parts.add(slope.toString()));
    if (parts.isEmpty()) {
      double middle = response.decibelsAt(1000);
      if (Math.abs(middle) >= INAUDIBLE_DB) {
        parts.add(decibels(middle));
      }
    }
    if (stage.context().lowestHz().isPresent()) {
      double lowest = stage.context().lowestHz().getAsDouble();
      double loss = response.decibelsAt(lowest);
      if (Math.abs(loss) >= INAUDIBLE_DB && Double.isFinite(loss)) {
        parts.add(decibels(loss) + " at the lowest note " + NoteName.nearest(lowest));
      }
    }
  }

  private static void dynamics(StageElement stage, StaticCurve curve, List<String> parts) {
    double reduction = curve.gainReductionDb(StagePlots.NOMINAL_DBFS);
    parts.add(
        NumberText.format(reduction, 1)
            + " dB of gain reduction at "
            + sign(StagePlots.NOMINAL_DBFS)
            + " dBFS");
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

  /**
   * Spells a gain.
   *
   * @param decibels the gain [dB], which may be infinite
   * @return such as "−3.0 dB"
   */
  public static String decibels(double decibels) {
    if (!Double.isFinite(decibels)) {
      return decibels < 0 ? "nothing passes" : "unbounded";
    }
    String text = String.valueOf(Math.round(Math.abs(decibels) * 10) / 10.0);
    boolean isZero = text.equals("0.0");
    return (isZero ? "" : decibels < 0 ? "\u2212" : "+") + text + " dB";
  }

  private static String sign(double value) {
    return NumberText.format(value, 1).replace('-', '\u2212');
  }
}
