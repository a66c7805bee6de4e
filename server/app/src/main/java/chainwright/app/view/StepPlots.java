package chainwright.app.view;

import chainwright.app.plot.Curve;
import chainwright.app.plot.CurveRole;
import chainwright.app.plot.Samples;
import chainwright.app.plot.StepPlot;
import chainwright.app.plot.TimeEvent;
import chainwright.app.plot.TimeMark;
import chainwright.app.plot.ValueRange;
import chainwright.dsp.dynamics.Ballistics;
import chainwright.dsp.dynamics.CompressorDesign;
import chainwright.dsp.dynamics.Detector;
import chainwright.dsp.dynamics.GateDesign;
import chainwright.dsp.dynamics.SmoothedBallistics;
import chainwright.dsp.dynamics.StaticCurve;
import chainwright.dsp.dynamics.StepResponse;
import chainwright.dsp.dynamics.TwoStageBallistics;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageSound;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Makes the plot of what attack, hold and release do: the gain while a tone steps up over the
 * threshold and down again.
 *
 * <p>The tone comes from 10 dB below the threshold (of a gate: below where it closes) to 10 dB
 * above it. The gain is that of the stage's own detector and ballistics, sample by sample; only the
 * distance of the samples grows with the times, for one-pole smoothing of a steady level gives the
 * same values at any rate.
 */
public final class StepPlots {

  private static final double STEP_DB = 10;
  private static final double TIME_CONSTANTS = 4;
  private static final int MOST_SAMPLES = 6000;
  private static final int POINTS = 150;
  private static final double LEAST_SECONDS = 0.002;

  /** Source: 1 − 1/e, the definition of attack and release. */
  private static final double SHARE = 1 - Math.exp(-1);

  private StepPlots() {}

  /**
   * Returns the step of a stage.
   *
   * @param stage the stage
   * @return the plot; empty for a stage without attack and release
   */
  public static Optional<StepPlot> of(StageElement stage) {
    return stage.sound().flatMap(sound -> of(stage, sound));
  }

  private static Optional<StepPlot> of(StageElement stage, StageSound sound) {
    Optional<Double> threshold = stage.context().settings().number("threshold");
    if (threshold.isEmpty()) {
      return Optional.empty();
    }
    if (sound.compressor().isPresent()) {
      CompressorDesign design = sound.compressor().get();
      Ballistics ballistics = design.ballistics();
      double windowSeconds =
          design.detector() instanceof Detector.Rms rms ? rms.windowSeconds() : 0;
      StepResponse.Step step =
          step(
              threshold.get() - STEP_DB,
              threshold.get() + STEP_DB,
              ballistics.attackSeconds() + windowSeconds,
              releaseSeconds(ballistics) + windowSeconds);
      return Optional.of(
          draw(
              stage,
              step,
              design.curve(),
              StepResponse.analyze(design, step, rateHz(step, stage))));
    }
    if (sound.gate().isPresent()) {
      GateDesign design = sound.gate().get();
      StepResponse.Step step =
          step(
              threshold.get() - design.curve().hysteresisDb() - STEP_DB,
              threshold.get() + STEP_DB,
              design.attackSeconds(),
              design.releaseSeconds() + design.holdSeconds() / TIME_CONSTANTS);
      return Optional.of(
          draw(
              stage,
              step,
              design.curve(),
              StepResponse.analyze(design, step, rateHz(step, stage))));
    }
    return Optional.empty();
  }

  private static double releaseSeconds(Ballistics ballistics) {
    if (ballistics instanceof TwoStageBallistics stages) {
      return stages.slowSeconds();
    }
    return ((SmoothedBallistics) ballistics).releaseSeconds();
  }

  /** Long enough for the gain to settle; the louder part takes at least a fifth of the picture. */
  private static StepResponse.Step step(
      double lowDb, double highDb, double attackSeconds, double releaseSeconds) {
    double low = Math.max(LEAST_SECONDS, TIME_CONSTANTS * releaseSeconds);
    double high = Math.max(Math.max(LEAST_SECONDS, TIME_CONSTANTS * attackSeconds), low / 4);
    return new StepResponse.Step(lowDb, highDb, high, low);
  }

  private static double rateHz(StepResponse.Step step, StageElement stage) {
    return Math.min(
        stage.context().rate().hertz(), MOST_SAMPLES / (step.highSeconds() + step.lowSeconds()));
  }

  private static StepPlot draw(
      StageElement stage, StepResponse.Step step, StaticCurve curve, StepResponse response) {
    int release = response.releaseIndex();
    int last = response.size() - 1;
    double before = curve.gainDb(step.lowDb());
    List<Integer> shown = new ArrayList<>();
    thin(0, release - 1, shown);
    thin(release, last, shown);
    double lead = (step.highSeconds() + step.lowSeconds()) / 16;
    double[] times = new double[shown.size() + 2];
    double[] gains = new double[shown.size() + 2];
    times[0] = -lead;
    gains[0] = before;
    gains[1] = before;
    for (int i = 0; i < shown.size(); i++) {
      times[i + 2] = elapsedSeconds(response, shown.get(i));
      gains[i + 2] = response.gainDb(shown.get(i));
    }
    List<TimeMark> marks = new ArrayList<>();
    double settled = curve.gainDb(step.highDb());
    mark(response, 0, release - 1, before, settled, marks);
    mark(response, release, last, response.gainDb(release - 1), before, marks);
    return StepPlot.of(
            "Step of " + stage.word() + ": " + words(stage),
            List.of(new Curve("gain", CurveRole.STAGE, Samples.of(times), Samples.of(gains))),
            new ValueRange(-lead, step.highSeconds() + step.lowSeconds()))
        .withEvents(
            List.of(
                new TimeEvent(0, "up to " + Readings.level(step.highDb())),
                new TimeEvent(
                    response.timeSeconds(release), "down to " + Readings.level(step.lowDb()))))
        .withMarks(marks);
  }

  private static String words(StageElement stage) {
    List<String> parts = new ArrayList<>();
    for (String name : List.of("attack", "hold", "release")) {
      stage
          .context()
          .settings()
          .number(name)
          .ifPresent(seconds -> parts.add(name + " " + Readings.time(seconds)));
    }
    return String.join(", ", parts);
  }

  /** More samples right after the step, where the gain moves fastest. */
  private static void thin(int from, int to, List<Integer> shown) {
    int before = -1;
    for (int i = 0; i < POINTS; i++) {
      double along = i / (POINTS - 1.0);
      int index = from + (int) Math.round((to - from) * along * along);
      if (index != before) {
        shown.add(index);
      }
      before = index;
    }
  }

  /** The gain of a sample is that at its end. */
  private static double elapsedSeconds(StepResponse response, int index) {
    return response.timeSeconds(index) + response.timeSeconds(1);
  }

  /** Marks where 63 % of the way to the settled gain is gone, between samples. */
  private static void mark(
      StepResponse response,
      int from,
      int to,
      double startDb,
      double settledDb,
      List<TimeMark> marks) {
    double way = settledDb - startDb;
    if (Math.abs(way) < 0.1) {
      return;
    }
    double before = 0;
    for (int i = from; i <= to; i++) {
      double gone = (response.gainDb(i) - startDb) / way;
      if (gone >= SHARE) {
        double part = (SHARE - before) / (gone - before);
        double seconds = (i - from + part) * response.timeSeconds(1);
        marks.add(
            new TimeMark(
                response.timeSeconds(from) + seconds,
                startDb + SHARE * way,
                "63 % after " + Readings.time(seconds)));
        return;
      }
      before = gone;
    }
  }
}
