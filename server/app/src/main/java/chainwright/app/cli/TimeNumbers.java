package chainwright.app.cli;

import chainwright.app.cli.NumberTable.Column;
import chainwright.app.plot.Curve;
import chainwright.app.plot.Samples;
import chainwright.app.view.DecayCourse;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.DecayModel;
import chainwright.engine.stage.RepeatsDecay;
import chainwright.engine.stage.RoomDecay;
import chainwright.engine.stage.StageSound;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The numbers behind a plot over time.
 *
 * @param subject what is plotted
 * @param at where to look [s], rising; empty for the usual grid
 */
record TimeNumbers(PlotSubject subject, List<Double> at) {

  private static final int POINTS = 481;
  private static final double MOST_SECONDS = 600;

  /** The course up to where it is asked for has a length. */
  private static final double LEAST_SECONDS = 0.01;

  private static final Column LOW =
      new Column("low_level_db", "dB", "the same in the octave of 125 Hz");

  private static final Column HIGH =
      new Column("high_level_db", "dB", "the same in the octave of 4 kHz");

  private static final List<Column> ROOM =
      List.of(
          new Column("time_s", "s", "the time after a steady sound has stopped"),
          new Column(
              "level_db",
              "dB",
              "the energy still to come after a click as a share of all, which is the level of the"
                  + " sound that has stopped (ISO 3382-1), in the octaves of 500 Hz and 1 kHz"),
          LOW,
          HIGH);

  private static final List<Column> REPEATS =
      List.of(
          new Column("time_s", "s", "the time of a repeat after the sound"),
          new Column(
              "level_db",
              "dB",
              "the level of the repeat beside that of the sound as it came in, in the octaves of"
                  + " 500 Hz and 1 kHz"),
          LOW,
          HIGH);

  private static final List<Column> STEP =
      List.of(
          new Column("time_s", "s", "the time after a tone has stepped up"),
          new Column("gain_db", "dB", "the gain while the tone steps up and down again"));

  /**
   * Computes the numbers.
   *
   * @return the table, rising, each time once
   * @throws IOException if the stage has no such numbers, or a time lies off the axis
   */
  NumberTable table() throws IOException {
    StageElement stage = subject.sounding();
    Optional<DecayModel> decay = stage.sound().flatMap(StageSound::decay);
    if (decay.isEmpty()) {
      return step(subject.step().curves().get(0));
    }
    if (decay.get() instanceof RoomDecay room) {
      return room(stage, room);
    }
    if (!at.isEmpty()) {
      throw new IOException("an echo is heard at its repeats alone; leave `--at` out");
    }
    DecayCourse course = DecayCourse.ofRepeats(stage, (RepeatsDecay) decay.get());
    return table(REPEATS, course, toList(course.seconds()));
  }

  private NumberTable room(StageElement stage, RoomDecay room) throws IOException {
    PlotNumbers.require(at, 0, MOST_SECONDS, "time", " s");
    double end =
        at.isEmpty()
            ? DecayCourse.endSeconds(stage, room)
            : Math.max(LEAST_SECONDS, at.get(at.size() - 1));
    DecayCourse course = DecayCourse.ofRoom(stage, room, end, POINTS);
    return table(ROOM, course, at.isEmpty() ? toList(course.seconds()) : at);
  }

  private static NumberTable table(List<Column> columns, DecayCourse course, List<Double> times) {
    List<List<Double>> rows = new ArrayList<>();
    for (int i = 0; i < times.size(); i++) {
      List<Double> row = new ArrayList<>();
      row.add(times.get(i));
      for (Samples levels : course.levelsDb()) {
        row.add(between(course.seconds(), levels, times.get(i)));
      }
      rows.add(List.copyOf(row));
    }
    return new NumberTable(columns.subList(0, 1 + course.bands().size()), rows);
  }

  private NumberTable step(Curve gain) throws IOException {
    PlotNumbers.require(at, 0, gain.x().get(gain.x().size() - 1), "time", " s");
    List<List<Double>> rows =
        (at.isEmpty() ? toList(gain.x()) : at)
            .stream().map(time -> List.of(time, between(gain.x(), gain.y(), time))).toList();
    return new NumberTable(STEP, rows);
  }

  /** The value at a place, by a straight line from the place before to that after it. */
  private static double between(Samples places, Samples values, double place) {
    int after = 0;
    while (after < places.size() - 1 && places.get(after) < place) {
      after++;
    }
    if (after == 0 || places.get(after) == place) {
      return values.get(after);
    }
    double part = (place - places.get(after - 1)) / (places.get(after) - places.get(after - 1));
    return values.get(after - 1) + part * (values.get(after) - values.get(after - 1));
  }

  private static List<Double> toList(Samples samples) {
    return IntStream.range(0, samples.size()).mapToObj(samples::get).toList();
  }
}
