package chainwright.app.plot;

import chainwright.app.plot.AxisChoice.Extent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Turns each kind of plot into a chart: chooses the axes and puts the readings into words. */
final class ChartOf implements Plot.Visitor<Chart> {

  private static final double SECONDS_AXIS_FROM = 3;
  private static final double[] LEVEL_STEPS_DB = {12, 6, 20, 24, 10};
  private static final int LEVEL_PIECES = 6;

  /** A square plot in a hover has room for so many labels side by side, and one more. */
  private static final int MOST_PIECES = 5;

  private static final double MOST_DB = 200;

  static Chart plot(Plot plot) {
    return plot.accept(new ChartOf());
  }

  @Override
  public Chart visit(FrequencyPlot plot) {
    Axis x = Axis.ofFrequency(plot.frequencies());
    Axis y = responseAxis(plot);
    List<Chart.Band> bands = new ArrayList<>();
    for (Zone zone : plot.zones()) {
      double low = Math.max(zone.lowHz(), x.range().low());
      double high = Math.min(zone.highHz(), x.range().high());
      if (high > low) {
        bands.add(new Chart.Band(low, high, zone.name()));
      }
    }
    List<Chart.Mark> marks = new ArrayList<>();
    for (FrequencyMarker marker : plot.markers()) {
      if (x.contains(marker.frequencyHz())) {
        marks.add(new Chart.Mark(marker.frequencyHz(), onAxis(marker.value(), y), marker.label()));
      }
    }
    return new Chart(
        plot.title(),
        plot.response().words() + " over frequency",
        x,
        y,
        false,
        y.contains(0) ? 0 : Double.NaN,
        Double.NaN,
        bands,
        List.of(),
        plot.curves(),
        marks,
        List.of(),
        List.of(),
        List.of());
  }

  @Override
  public Chart visit(LevelPlot plot) {
    ValueRange levels = plot.levels();
    double step = levelStep(levels);
    Axis axis = Axis.ofEven(levels, step, 1, "dBFS in");
    List<Chart.Band> bands = new ArrayList<>();
    ValueRange knee = plot.knee();
    if (knee != null && knee.low() < levels.high() && knee.high() > levels.low()) {
      bands.add(
          new Chart.Band(
              Math.max(knee.low(), levels.low()), Math.min(knee.high(), levels.high()), "knee"));
    }
    List<Chart.Guide> guides = new ArrayList<>();
    for (LevelLine line : plot.thresholds()) {
      if (axis.contains(line.inputDbfs())) {
        guides.add(new Chart.Guide(line.inputDbfs(), line.label()));
      }
    }
    List<Chart.Mark> marks = new ArrayList<>();
    List<Chart.Note> notes = new ArrayList<>();
    LevelReading reading = plot.reading();
    if (reading != null) {
      if (axis.contains(reading.inputDbfs())) {
        marks.add(new Chart.Mark(reading.inputDbfs(), onAxis(reading.outputDbfs(), axis), ""));
      }
      notes.add(
          new Chart.Note(
              reading.label(),
              "in "
                  + Numerals.text(reading.inputDbfs(), 1)
                  + " → out "
                  + Numerals.text(reading.outputDbfs(), 1)
                  + " dBFS"));
      notes.add(new Chart.Note("reduction", Numerals.text(reading.reductionDb(), 1) + " dB"));
    }
    return new Chart(
        plot.title(),
        "output over input",
        axis,
        Axis.ofEven(levels, step, 1, "dBFS out"),
        true,
        Double.NaN,
        Double.NaN,
        bands,
        guides,
        plot.curves(),
        marks,
        List.of(),
        List.of(),
        notes);
  }

  @Override
  public Chart visit(StepPlot plot) {
    Axis x = timeAxis(plot.times());
    ValueRange gains = plot.gains();
    Axis y =
        gains == null
            ? AxisChoice.reduction(Extent.ofCurves(plot.curves(), plot.times()))
            : AxisChoice.decibels(gains);
    return new Chart(
        plot.title(),
        "gain over time",
        x,
        y,
        false,
        y.contains(0) ? 0 : Double.NaN,
        Double.NaN,
        List.of(),
        guides(plot.events(), x),
        plot.curves(),
        marks(plot.marks(), x, y),
        List.of(),
        List.of(),
        List.of());
  }

  @Override
  public Chart visit(DecayPlot plot) {
    Axis x = timeAxis(plot.times());
    Axis y = AxisChoice.decibels(plot.levels());
    List<Chart.Stem> stems = new ArrayList<>();
    for (Repeat repeat : plot.repeats()) {
      if (x.contains(repeat.timeSeconds()) && repeat.levelDb() > y.range().low()) {
        stems.add(
            new Chart.Stem(
                repeat.timeSeconds(),
                onAxis(repeat.levelDb(), y),
                Numerals.text(repeat.levelDb(), 1)));
      }
    }
    return new Chart(
        plot.title(),
        plot.caption(),
        x,
        y,
        false,
        Double.NaN,
        DecayPlot.FALL_DB,
        List.of(),
        guides(plot.events(), x),
        plot.curves(),
        marks(plot.marks(), x, y),
        List.of(),
        stems,
        List.of());
  }

  private static Axis timeAxis(ValueRange times) {
    boolean inSeconds = times.span() >= SECONDS_AXIS_FROM;
    return Axis.ofEven(
        times, Axis.niceStep(times.span(), 8), inSeconds ? 1 : 1000, inSeconds ? "s" : "ms");
  }

  private static List<Chart.Guide> guides(List<TimeEvent> events, Axis x) {
    return events.stream()
        .filter(event -> x.contains(event.timeSeconds()))
        .map(event -> new Chart.Guide(event.timeSeconds(), event.label()))
        .toList();
  }

  private static List<Chart.Mark> marks(List<TimeMark> marks, Axis x, Axis y) {
    return marks.stream()
        .filter(mark -> x.contains(mark.timeSeconds()))
        .map(mark -> new Chart.Mark(mark.timeSeconds(), onAxis(mark.heightDb(), y), mark.label()))
        .toList();
  }

  @Override
  public Chart visit(HarmonicsPlot plot) {
    int count = plot.levelsDb().size();
    double floor = plot.floorDb();
    List<Axis.Tick> ticks = new ArrayList<>();
    List<Chart.Bar> bars = new ArrayList<>();
    for (int n = 1; n <= count; n++) {
      double level = plot.levelsDb().get(n - 1);
      ticks.add(new Axis.Tick(n, Integer.toString(n)));
      boolean shown = level > floor;
      bars.add(
          new Chart.Bar(
              n,
              shown ? Math.min(level, MOST_DB) : floor,
              shown ? Numerals.text(level, 0) : "<" + Numerals.text(floor, 0),
              n % 2 == 0));
    }
    Axis x = new Axis(new ValueRange(0.4, count + 0.6), false, ticks, Samples.of(), 1, "no.");
    double ceiling = 0;
    for (Chart.Bar bar : bars) {
      ceiling = Math.max(ceiling, 20 * Math.ceil(Math.min(bar.top(), MOST_DB) / 20));
    }
    double span = ceiling - floor;
    Axis y =
        Axis.ofEven(
            new ValueRange(floor, ceiling),
            span > 80 && span <= 160 ? 20 : Axis.niceStep(span, 5),
            1,
            "dB");
    return new Chart(
        plot.title(),
        "THD "
            + distortion(plot.totalDistortionPercent())
            + " % · fundamental "
            + Numerals.hertz(plot.fundamentalHz()),
        x,
        y,
        false,
        Double.NaN,
        Double.NaN,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        bars,
        List.of(),
        List.of());
  }

  /** Returns the decibels from tick to tick, such that ticks stand on both ends if they can. */
  private static double levelStep(ValueRange levels) {
    for (double step : LEVEL_STEPS_DB) {
      double pieces = levels.span() / step;
      if (pieces >= 3 && pieces <= MOST_PIECES && pieces % 1 == 0 && levels.low() % step == 0) {
        return step;
      }
    }
    return Axis.niceStep(levels.span(), LEVEL_PIECES);
  }

  private static Axis responseAxis(FrequencyPlot plot) {
    ValueRange given = plot.values();
    Extent chain =
        Extent.ofCurves(
            withRole(plot.curves(), role -> role == CurveRole.CHAIN_SO_FAR), plot.frequencies());
    Extent shown =
        plot.response() == Response.MAGNITUDE
            ? Extent.ofCurves(
                withRole(plot.curves(), role -> role != CurveRole.CHAIN_SO_FAR), plot.frequencies())
            : Extent.ofCurves(plot.curves(), plot.frequencies());
    for (FrequencyMarker marker : plot.markers()) {
      shown = shown.with(marker.value());
    }
    return switch (plot.response()) {
      case MAGNITUDE -> given == null ? AxisChoice.gain(shown, chain) : AxisChoice.decibels(given);
      case PHASE -> given == null ? AxisChoice.phase(shown) : AxisChoice.phaseOver(given);
      case GROUP_DELAY ->
          given == null
              ? AxisChoice.fromZero(shown, "ms")
              : Axis.ofEven(given, Axis.niceStep(given.span(), 4), 1, "ms");
    };
  }

  private static List<Curve> withRole(List<Curve> curves, Predicate<CurveRole> isWanted) {
    return curves.stream().filter(curve -> isWanted.test(curve.role())).toList();
  }

  private static String distortion(double percent) {
    return Numerals.text(percent, percent < 0.1 ? 3 : percent < 10 ? 2 : 1);
  }

  private static double onAxis(double value, Axis y) {
    double low = y.range().low();
    double high = y.range().high();
    return Double.isNaN(value)
        ? Math.max(low, Math.min(high, 0))
        : Math.max(low, Math.min(high, value));
  }
}
