package chainwright.app.cli;

import chainwright.dsp.dynamics.StaticCurve;
import chainwright.dsp.filter.FrequencyGrid;
import chainwright.dsp.filter.Response;
import chainwright.dsp.nonlinear.Harmonics;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageSound;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * What is plotted: a chain, or one stage of it.
 *
 * @param path the chain
 * @param stage the stage; empty for the whole chain
 */
record PlotSubject(SignalPath path, Optional<StageElement> stage) {

  /** The sine whose harmonics are shown [Hz]: IEC 60268-3 measures at 1 kHz; from memory. */
  static final double SINE_HZ = 1000;

  /** The level of that sine [dBFS]: the alignment level of EBU R 68. */
  static final double SINE_DBFS = -18;

  private static final int GRID_POINTS = 481;
  private static final int LOWEST_DBFS = -80;
  private static final int HARMONIC_COUNT = 10;
  private static final int MOST_HARMONICS = 100;

  /** Returns the heading. */
  String title() {
    String chain = path.track().name().text();
    return stage.map(one -> one.word() + " of " + chain).orElse(chain);
  }

  /**
   * Returns the axis that tells most.
   *
   * @return harmonics for a stage that adds some, levels for one that reacts to level, else
   *     frequencies
   */
  PlotAxis usualAxis() {
    Optional<StageSound> sound = stage.flatMap(StageElement::sound);
    if (sound.flatMap(StageSound::harmonics).isPresent()) {
      return PlotAxis.HARMONICS;
    }
    return sound.flatMap(StageSound::curve).isPresent() ? PlotAxis.LEVEL : PlotAxis.FREQUENCY;
  }

  /**
   * Computes the numbers.
   *
   * @param axis what they run over
   * @param at where to look [Hz], [dBFS] or number of the harmonic; empty for the usual grid
   * @return the table, rising, each place once
   * @throws IOException if the stage has no such numbers, or a place lies off the axis
   */
  NumberTable table(PlotAxis axis, List<Double> at) throws IOException {
    List<Double> places = at.stream().sorted().distinct().toList();
    return switch (axis) {
      case FREQUENCY -> frequencies(places);
      case LEVEL -> levels(places);
      case HARMONICS -> harmonics(places);
    };
  }

  private NumberTable frequencies(List<Double> places) throws IOException {
    double highestHz = path.rate().nyquist().hertz();
    require(places, 0, highestHz, "frequency", " Hz");
    Response response = stage.isPresent() ? sound().response() : path.response();
    double[] hertz =
        places.isEmpty()
            ? FrequencyGrid.audible(path.rate(), GRID_POINTS).toHertz()
            : places.stream().mapToDouble(Double::doubleValue).toArray();
    double[] decibels = response.toDecibels(hertz);
    double[] radians = response.toPhase(hertz);
    double[] seconds = response.toGroupDelay(hertz);
    List<List<Double>> rows = new ArrayList<>();
    for (int i = 0; i < hertz.length; i++) {
      rows.add(List.of(hertz[i], decibels[i], radians[i], seconds[i]));
    }
    return new NumberTable(
        List.of("frequency_hz", "magnitude_db", "phase_rad", "group_delay_s"), rows);
  }

  private NumberTable levels(List<Double> places) throws IOException {
    require(places, -200, 60, "level", " dBFS");
    StaticCurve curve =
        sound().curve().orElseThrow(() -> new IOException(subject() + " does not react to level"));
    double[] inputs =
        places.isEmpty()
            ? DoubleStream.iterate(LOWEST_DBFS, level -> level <= 0, level -> level + 1).toArray()
            : places.stream().mapToDouble(Double::doubleValue).toArray();
    List<List<Double>> rows = new ArrayList<>();
    for (double input : inputs) {
      rows.add(List.of(input, curve.outputDb(input)));
    }
    return new NumberTable(List.of("input_dbfs", "output_dbfs"), rows);
  }

  private NumberTable harmonics(List<Double> places) throws IOException {
    require(places, 1, MOST_HARMONICS, "harmonic", "");
    for (double place : places) {
      if (place != Math.rint(place)) {
        throw new IOException("a harmonic is a whole number, but `--at` names " + place);
      }
    }
    int count = places.isEmpty() ? HARMONIC_COUNT : places.get(places.size() - 1).intValue();
    Harmonics found =
        sound()
            .harmonics()
            .orElseThrow(() -> new IOException(subject() + " adds no harmonics"))
            .harmonics(SINE_HZ, SINE_DBFS, count);
    List<List<Double>> rows = new ArrayList<>();
    for (int n = 1; n <= count; n++) {
      if (places.isEmpty() || places.contains((double) n)) {
        rows.add(List.of((double) n, found.levelDbfs(n)));
      }
    }
    return new NumberTable(List.of("harmonic", "level_dbfs"), rows);
  }

  private StageSound sound() throws IOException {
    if (stage.isEmpty()) {
      throw new IOException("this axis shows one stage; name it by `--stage`");
    }
    return stage
        .flatMap(StageElement::sound)
        .orElseThrow(
            () ->
                new IOException(
                    subject() + " cannot be computed from its settings; `check` says why"));
  }

  private String subject() {
    return stage.map(one -> "the stage `" + one.word() + "`").orElse("the chain");
  }

  private static void require(
      List<Double> places, double low, double high, String what, String unit) throws IOException {
    for (double place : places) {
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
