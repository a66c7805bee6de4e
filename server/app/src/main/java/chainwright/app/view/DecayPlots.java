package chainwright.app.view;

import chainwright.app.plot.Curve;
import chainwright.app.plot.CurveRole;
import chainwright.app.plot.DecayPlot;
import chainwright.app.plot.Repeat;
import chainwright.app.plot.Samples;
import chainwright.app.plot.TimeEvent;
import chainwright.app.plot.TimeMark;
import chainwright.app.plot.ValueRange;
import chainwright.app.view.DecayCourse.Band;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.DecayModel;
import chainwright.engine.stage.RepeatsDecay;
import chainwright.engine.stage.RoomDecay;
import chainwright.engine.stage.StageSound;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Makes the plot of what is heard after a sound: the decay of a room, the repeats of an echo. */
public final class DecayPlots {

  private static final int POINTS = 300;

  /** Two lines nearer than this are drawn as one. */
  private static final double INDISTINCT_DB = 1;

  private DecayPlots() {}

  /**
   * Returns the decay of a stage.
   *
   * @param stage the stage
   * @return the plot; empty for a stage that adds nothing after the sound
   */
  public static Optional<DecayPlot> of(StageElement stage) {
    return stage.sound().flatMap(StageSound::decay).map(decay -> of(stage, decay));
  }

  private static DecayPlot of(StageElement stage, DecayModel decay) {
    return decay instanceof RoomDecay room
        ? ofRoom(stage, room)
        : ofRepeats(stage, (RepeatsDecay) decay);
  }

  private static DecayPlot ofRoom(StageElement stage, RoomDecay room) {
    double end = DecayCourse.endSeconds(stage, room);
    DecayCourse course = DecayCourse.ofRoom(stage, room, end, POINTS);
    double preDelay = room.room().preDelayFrames() / room.room().sampleRateHz();
    List<Curve> curves = curves(course, course.seconds());
    List<TimeMark> marks = new ArrayList<>();
    for (Curve curve : curves) {
      OptionalDouble fallen = fallen(curve);
      if (fallen.isPresent()) {
        String time = Readings.time(fallen.getAsDouble());
        marks.add(
            new TimeMark(
                fallen.getAsDouble(),
                DecayPlot.FALL_DB,
                curve.role() == CurveRole.STAGE
                    ? "−60 dB after " + time
                    : time + " at " + curve.label()));
      }
    }
    return new DecayPlot(
        StagePlots.title(stage),
        room.blendShare() < 1 ? "level below the sound with its room" : "level after a sound stops",
        curves,
        List.of(),
        preDelay > 0
            ? List.of(new TimeEvent(preDelay, "pre-delay " + Readings.time(preDelay)))
            : List.of(),
        marks,
        new ValueRange(0, end));
  }

  private static DecayPlot ofRepeats(StageElement stage, RepeatsDecay decay) {
    DecayCourse course = DecayCourse.ofRepeats(stage, decay);
    double apart = decay.echo().delayFrames() / decay.echo().rate().hertz();
    List<Repeat> repeats = new ArrayList<>();
    for (int i = 0; i < course.seconds().size(); i++) {
      repeats.add(new Repeat(course.seconds().get(i), course.levelsDb().get(0).get(i)));
    }
    List<Curve> curves = curves(course, course.seconds());
    double last = repeats.isEmpty() ? apart : repeats.get(repeats.size() - 1).timeSeconds();
    return new DecayPlot(
        StagePlots.title(stage),
        (decay.blendShare() < 1 ? "the sound and each repeat" : "level of each repeat")
            + (curves.size() > 1 ? ", " + curves.get(0).label() : ""),
        curves.subList(1, curves.size()),
        repeats,
        List.of(),
        List.of(),
        new ValueRange(-0.03 * (last + apart), last + 0.6 * apart));
  }

  /** The middle octaves, and those that fall otherwise. */
  private static List<Curve> curves(DecayCourse course, Samples seconds) {
    double first = Band.MIDDLE.firstHz();
    double last = Band.MIDDLE.lastHz();
    List<Curve> others = new ArrayList<>();
    for (int b = 1; b < course.bands().size(); b++) {
      Band band = course.bands().get(b);
      if (course.isAlike(0, b, INDISTINCT_DB)) {
        first = Math.min(first, band.firstHz());
        last = Math.max(last, band.lastHz());
      } else {
        others.add(new Curve(band.inWords(), CurveRole.BRANCH, seconds, course.levelsDb().get(b)));
      }
    }
    List<Curve> curves = new ArrayList<>();
    curves.add(
        new Curve(
            new Band(first, last).inWords(), CurveRole.STAGE, seconds, course.levelsDb().get(0)));
    curves.addAll(others);
    return curves;
  }

  /** Where a curve has fallen by 60 dB, between its points. */
  private static OptionalDouble fallen(Curve curve) {
    for (int i = 1; i < curve.x().size(); i++) {
      double above = curve.y().get(i - 1);
      double below = curve.y().get(i);
      if (below <= DecayPlot.FALL_DB) {
        double part = Double.isInfinite(below) ? 1 : (above - DecayPlot.FALL_DB) / (above - below);
        return OptionalDouble.of(
            curve.x().get(i - 1) + part * (curve.x().get(i) - curve.x().get(i - 1)));
      }
    }
    return OptionalDouble.empty();
  }
}
