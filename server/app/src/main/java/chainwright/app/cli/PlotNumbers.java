package chainwright.app.cli;

import chainwright.app.cli.NumberTable.Column;
import chainwright.dsp.dynamics.StaticCurve;
import chainwright.dsp.filter.FrequencyGrid;
import chainwright.dsp.filter.Response;
import chainwright.dsp.nonlinear.Harmonics;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.DoubleStream;

/**
 * The numbers behind a plot.
 *
 * @param subject what is plotted
 * @param at where to look [Hz], [dBFS], number of the harmonic or [s]; empty for the usual grid
 */
record PlotNumbers(PlotSubject subject, List<Double> at) {

  private static final int GRID_POINTS = 481;
  private static final int LOWEST_DBFS = -80;
  private static final int HARMONIC_COUNT = 10;
  private static final int MOST_HARMONICS = 100;

  private static final List<Column> FREQUENCIES =
      List.of(
          new Column("frequency_hz", "Hz", "the frequency of a steady sine"),
          new Column(
              "magnitude_db", "dB", "20 log10 |H|: output over input, with dynamics at rest"),
          new Column(
              "phase_rad",
              "rad",
              "the phase of H, unwrapped: continuous from 0 Hz upward; negative where the output"
                  + " comes later"),
          new Column(
              "group_delay_s",
              "s",
              "-d phase / d (2 pi frequency), without look-ahead and converters"));

  private static final List<Column> LEVELS =
      List.of(
          new Column("input_dbfs", "dBFS", "a steady level, as the detector measures it"),
          new Column("output_dbfs", "dBFS", "the level that leaves, make-up gain included"));

  private static final List<Column> HARMONICS =
      List.of(
          new Column("harmonic", "", "the multiple of the sine's frequency; 1 is the sine itself"),
          new Column("level_dbfs", "dBFS", "the peak level of that harmonic at the output"));

  PlotNumbers {
    at = at.stream().sorted().distinct().toList();
  }

  /**
   * Computes the numbers.
   *
   * @param axis what they run over
   * @param tone the sine whose harmonics are meant
   * @return the table, rising, each place once
   * @throws IOException if the stage has no such numbers, or a place lies off the axis
   */
  NumberTable table(PlotAxis axis, Tone tone) throws IOException {
    return switch (axis) {
      case FREQUENCY -> frequencies();
      case LEVEL -> levels();
      case HARMONICS -> harmonics(tone);
      case TIME -> new TimeNumbers(subject, at).table();
    };
  }

  private NumberTable frequencies() throws IOException {
    require(at, 0, subject.path().rate().nyquist().hertz(), "frequency", " Hz");
    if (subject.stage().isPresent()) {
      // Refuses a stage that cannot be computed.
      subject.sound();
    }
    Response response =
        subject.part().isPresent() ? subject.part().get().response() : subject.path().response();
    double[] hertz =
        at.isEmpty()
            ? FrequencyGrid.audible(subject.path().rate(), GRID_POINTS).toHertz()
            : at.stream().mapToDouble(Double::doubleValue).toArray();
    double[] decibels = response.toDecibels(hertz);
    double[] radians = response.toPhase(hertz);
    double[] seconds = response.toGroupDelay(hertz);
    List<List<Double>> rows = new ArrayList<>();
    for (int i = 0; i < hertz.length; i++) {
      rows.add(List.of(hertz[i], decibels[i], radians[i], seconds[i]));
    }
    return new NumberTable(FREQUENCIES, rows);
  }

  private NumberTable levels() throws IOException {
    require(at, -200, 60, "level", " dBFS");
    StaticCurve curve = subject.curve();
    double[] inputs =
        at.isEmpty()
            ? DoubleStream.iterate(LOWEST_DBFS, level -> level <= 0, level -> level + 1).toArray()
            : at.stream().mapToDouble(Double::doubleValue).toArray();
    List<List<Double>> rows = new ArrayList<>();
    for (double input : inputs) {
      rows.add(List.of(input, curve.outputDb(input)));
    }
    return new NumberTable(LEVELS, rows);
  }

  private NumberTable harmonics(Tone tone) throws IOException {
    require(at, 1, MOST_HARMONICS, "harmonic", "");
    for (double place : at) {
      if (place != Math.rint(place)) {
        throw new IOException("a harmonic is a whole number, but `--at` names " + place);
      }
    }
    int count = at.isEmpty() ? HARMONIC_COUNT : at.get(at.size() - 1).intValue();
    Harmonics found = subject.harmonics().harmonics(tone.hertz(), tone.levelDbfs(), count);
    List<List<Double>> rows = new ArrayList<>();
    for (int n = 1; n <= count; n++) {
      if (at.isEmpty() || at.contains((double) n)) {
        rows.add(List.of((double) n, found.levelDbfs(n)));
      }
    }
    return new NumberTable(HARMONICS, rows);
  }

  /** Refuses places that lie off an axis. */
  static void require(List<Double> at, double low, double high, String what, String unit)
      throws IOException {
    for (double place : at) {
      if (!(place >= low && place <= high)) {
        throw new IOException(
            String.format(
                Locale.ROOT,
                "a %s must lie between %.0f%s and %.0f%s, but `--at` names %s",
                what,
                low,
                unit,
                high,
                unit,
                place));
      }
    }
  }
}
