package chainwright.app.plot;

import java.util.ArrayList;
import java.util.List;

/** Draws one chart in terminal cells: names above, scales left and below, the key last. */
final class TextSheet {

  private static final int MOST_LANES = 4;
  private static final int LEAST_ROWS = 6;
  private static final int MOST_SUBDIVISIONS = 24;

  private final Chart chart;
  private final TextSigns signs;
  private final int columns;
  private final int plotColumns;
  private final int plotRows;
  private final Axis y;
  private final int left;
  private final Lanes lanes;
  private final int top;
  private final CellGrid grid;

  TextSheet(Chart chart, TextStyle style) {
    this.chart = chart;
    this.signs = TextSigns.of(style.asciiOnly());
    this.columns = style.columns();
    int perStep = rowsPerStep(chart.y(), style.rows());
    this.plotRows = rowsFor(chart.y(), perStep);
    this.y =
        chart.y().withHigh(chart.y().range().low() + (plotRows - 1) * chart.y().step() / perStep);
    this.left = gutter() + 1;
    int room = columns - left - 2;
    this.plotColumns = chart.square() ? Math.min(room, 2 * plotRows) : room;
    this.lanes = laneNames();
    this.top = Math.max(1, lanes.used());
    this.grid = new CellGrid(columns, top + plotRows + 2);
  }

  String draw() {
    for (Lanes.Placed placed : lanes.placed()) {
      // The lowest names come first, so that the row next to the plot is the fullest.
      grid.write(
          (int) Math.round(placed.left()), top - 1 - placed.lane(), signs.cells(placed.name()));
    }
    scales();
    backdrop();
    if (signs.asciiOnly()) {
      letterCurves();
    } else {
      dotCurves();
    }
    branchNumbers();
    bars();
    stems();
    List<String> homeless = marks();
    notes();
    StringBuilder out = new StringBuilder();
    heading(out);
    grid.appendTo(out);
    new TextKey(signs, columns, left).append(out, chart.curves(), homeless);
    return out.toString();
  }

  /** Returns how many lines lie from tick to tick, so that ticks fall on lines. */
  private static int rowsPerStep(Axis axis, int wanted) {
    int best = 1;
    for (int perStep = 1; perStep <= MOST_SUBDIVISIONS; perStep++) {
      int rows = rowsFor(axis, perStep);
      boolean nearer = Math.abs(rows - wanted) < Math.abs(rowsFor(axis, best) - wanted);
      if (nearer || rowsFor(axis, best) < LEAST_ROWS) {
        best = perStep;
      }
    }
    return best;
  }

  private static int rowsFor(Axis axis, int perStep) {
    return (int) Math.ceil(axis.range().span() / axis.step() * perStep - 1e-6) + 1;
  }

  private int gutter() {
    int widest = Math.max(signs.cells(y.unit()).size(), signs.cells(chart.x().unit()).size() + 1);
    for (Axis.Tick tick : y.ticks()) {
      widest = Math.max(widest, signs.cells(tick.label()).size());
    }
    return widest + 2;
  }

  private Lanes laneNames() {
    Lanes result = new Lanes(left, columns, 0, MOST_LANES);
    for (Chart.Band band : chart.bands()) {
      int from = column(band.low());
      int to = column(band.high());
      String words = signs.bracket(band.name(), to - from);
      result.add(words, (from + to) / 2.0, signs.cells(words).size());
    }
    for (Chart.Guide guide : chart.guides()) {
      result.add(guide.name(), column(guide.at()) + 0.5, signs.cells(guide.name()).size() + 1);
    }
    return result;
  }

  private void heading(StringBuilder out) {
    List<String> caption = signs.cells(chart.caption());
    List<String> title = signs.fitted(chart.title(), columns - caption.size() - 2);
    CellGrid line = new CellGrid(columns, 1);
    line.write(0, 0, title);
    line.write(columns - caption.size(), 0, caption);
    line.appendTo(out);
  }

  private void scales() {
    for (int r = 0; r < plotRows; r++) {
      grid.putFirm(left - 1, top + r, signs.upright());
    }
    for (int c = 0; c < plotColumns; c++) {
      grid.putFirm(left + c, top + plotRows, signs.level());
    }
    grid.putFirm(left - 1, top + plotRows, signs.corner());
    for (Axis.Tick tick : y.ticks()) {
      int r = row(tick.at());
      writeEnding(left - 3, r, tick.label());
      grid.putFirm(left - 1, r, signs.tickLeft());
    }
    writeEnding(left - 3, top - 1, y.unit());
    writeEnding(left - 3, top + plotRows + 1, chart.x().unit());
    for (Axis.Tick tick : chart.x().ticks()) {
      int c = column(tick.at());
      List<String> label = signs.cells(tick.label());
      grid.putFirm(c, top + plotRows, signs.tickBelow());
      int start = Math.min(columns - label.size(), c - (label.size() - 1) / 2);
      if (grid.isFree(start, top + plotRows + 1, label.size())) {
        grid.write(start, top + plotRows + 1, label);
      }
    }
  }

  private void writeEnding(int lastColumn, int row, String words) {
    List<String> cells = signs.cells(words);
    grid.write(lastColumn - cells.size() + 1, row, cells);
  }

  private void backdrop() {
    for (double height : new double[] {chart.baseline(), chart.level()}) {
      for (int c = 0; !Double.isNaN(height) && c < plotColumns; c++) {
        grid.put(left + c, row(height), signs.baseline());
      }
    }
    for (int c = 0; chart.square() && c < plotColumns; c++) {
      double fraction = c / (plotColumns - 1.0);
      grid.put(left + c, row(y.range().low() + fraction * y.range().span()), signs.unity());
    }
    for (Chart.Guide guide : chart.guides()) {
      for (int r = 0; r < plotRows; r++) {
        grid.putFirm(column(guide.at()), top + r, signs.guide());
      }
    }
  }

  private void dotCurves() {
    DotRaster dots = new DotRaster(plotColumns, plotRows);
    Box box = DotRaster.frame(plotColumns, plotRows);
    for (Curve curve : chart.curves()) {
      for (PointRun run : Strokes.lines(curve, chart.x(), y, box)) {
        dots.draw(run, curve.role());
      }
    }
    for (int r = 0; r < plotRows; r++) {
      for (int c = 0; c < plotColumns; c++) {
        String cell = dots.cell(c, r);
        if (!cell.isEmpty()) {
          grid.putFirm(left + c, top + r, cell);
        }
      }
    }
  }

  /** The stage comes last, over the others. */
  private void letterCurves() {
    Box box = new Box(left, top, left + plotColumns - 1, top + plotRows - 1);
    for (boolean stage : new boolean[] {false, true}) {
      for (Curve curve : chart.curves()) {
        if ((curve.role() == CurveRole.STAGE) == stage) {
          for (PointRun run : Strokes.lines(curve, chart.x(), y, box)) {
            letters(run, signs.letter(curve.role()));
          }
        }
      }
    }
  }

  private void letters(PointRun run, String letter) {
    for (int i = 0; i + 1 < run.size(); i++) {
      double dx = run.x(i + 1) - run.x(i);
      double dy = run.y(i + 1) - run.y(i);
      int steps = 1 + (int) Math.ceil(2 * Math.max(Math.abs(dx), Math.abs(dy)));
      for (int step = 0; step <= steps; step++) {
        double along = (double) step / steps;
        grid.putFirm(
            (int) Math.round(run.x(i) + along * dx),
            (int) Math.round(run.y(i) + along * dy),
            letter);
      }
    }
  }

  private void branchNumbers() {
    for (int i = 0; i < chart.curves().size(); i++) {
      int number = BranchNumbers.of(chart.curves(), i);
      double at = number == 0 ? Double.NaN : BranchNumbers.place(chart.curves(), i, chart.x(), y);
      if (!Double.isNaN(at)) {
        grid.putFirm(column(at), row(heightOf(chart.curves().get(i), at)), signs.number(number));
      }
    }
  }

  private double heightOf(Curve curve, double at) {
    int i = 0;
    while (i < curve.x().size() - 1 && curve.x().get(i) < at) {
      i++;
    }
    return curve.y().get(i);
  }

  private void bars() {
    for (Chart.Bar bar : chart.bars()) {
      int middle = column(bar.x());
      double height = y.fraction(bar.top()) * (plotRows - 1) + 0.5;
      boolean stands = bar.top() > y.range().low();
      int full = stands ? (int) height : 0;
      int bottom = top + plotRows - 1;
      for (int r = 0; r < full; r++) {
        barRow(middle, bottom - r, bar.even() ? signs.hollowSides() : signs.solid(8));
      }
      int eighths = (int) Math.round((height - full) * 8);
      int topRow = bottom - full;
      if (stands && bar.even()) {
        barRow(middle, topRow, signs.hollowTop());
      } else if (stands && eighths > 0) {
        barRow(middle, topRow, signs.solid(eighths));
      } else {
        topRow++;
      }
      List<String> label = signs.cells(bar.label());
      grid.write(middle - (label.size() - 1) / 2, topRow - 1, label);
    }
  }

  private void barRow(int middle, int row, String three) {
    for (int i = 0; i < 3; i++) {
      grid.putFirm(middle - 1 + i, row, three.substring(i, i + 1));
    }
  }

  /** Draws all lines before the first label, so that none runs through a word. */
  private void stems() {
    for (Chart.Stem stem : chart.stems()) {
      for (int r = row(stem.top()); r < top + plotRows; r++) {
        grid.putFirm(column(stem.x()), r, r == row(stem.top()) ? signs.mark() : signs.upright());
      }
    }
    for (Chart.Stem stem : chart.stems()) {
      List<String> label = signs.cells(stem.label());
      int from = Math.max(left + 1, column(stem.x()) - (label.size() - 1) / 2);
      int above = row(stem.top()) - 1;
      if (above >= top && grid.isFree(from, above, label.size())) {
        grid.write(from, above, label);
      }
    }
  }

  /** Writes marks and their words; returns the words that found no room beside their mark. */
  private List<String> marks() {
    List<String> homeless = new ArrayList<>();
    for (Chart.Mark mark : chart.marks()) {
      grid.putFirm(column(mark.x()), row(mark.y()), signs.mark());
    }
    for (Chart.Mark mark : chart.marks()) {
      if (!mark.label().isBlank() && !placed(mark)) {
        homeless.add(mark.label());
      }
    }
    return homeless;
  }

  private boolean placed(Chart.Mark mark) {
    List<String> label = signs.cells(mark.label());
    int c = column(mark.x());
    int r = row(mark.y());
    int width = label.size();
    int[][] places = {
      {c + 2, r},
      {c - width - 1, r},
      {c + 3, r},
      {c + 4, r},
      {c - width - 2, r},
      {c + 1, r - 1},
      {c + 1, r + 1},
      {c - width, r - 1},
      {c - width, r + 1},
      {c - width / 2, r - 1},
      {c - width / 2, r + 1}
    };
    for (int[] place : places) {
      boolean inside =
          place[1] >= top
              && place[1] < top + plotRows
              && place[0] >= left
              && place[0] + width <= columns;
      if (inside && grid.isFree(place[0], place[1], width)) {
        grid.write(place[0], place[1], label);
        return true;
      }
    }
    return false;
  }

  private void notes() {
    int r = top + 2;
    int from = left + plotColumns + 3;
    for (Chart.Note note : chart.notes()) {
      grid.write(from, r, signs.fitted(note.term(), columns - from));
      grid.write(from, r + 1, signs.fitted(note.reading(), columns - from));
      r += 3;
    }
  }

  private int column(double at) {
    return left + (int) Math.round(chart.x().fraction(at) * (plotColumns - 1));
  }

  private int row(double at) {
    double fraction = Math.max(0, Math.min(1, y.fraction(at)));
    return top + (int) Math.round((1 - fraction) * (plotRows - 1));
  }
}
