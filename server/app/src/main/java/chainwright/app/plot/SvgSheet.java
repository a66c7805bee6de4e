package chainwright.app.plot;

import chainwright.app.plot.LabelField.Ridge;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Draws one chart on one sheet, from the paper up to the words.
 *
 * <p>The frame is that of a map: a strip of light and dark pieces along both axes, one piece from
 * tick to tick.
 */
final class SvgSheet {

  private static final int WIDTH = 560;
  private static final int HEIGHT = 230;
  private static final int SQUARE_HEIGHT = 250;
  private static final int LOW_HEIGHT = 160;
  private static final int LOW_SQUARE_HEIGHT = 216;
  private static final double LEFT = 50;
  private static final double RIGHT = WIDTH - 16;
  private static final double LANE_PX = 14;
  private static final double LANES_TOP = 26;
  private static final double STRIP_PX = 4;
  private static final int MOST_LANES = 3;

  /** How far beside a square plot its readings and the key stand. */
  private static final double NOTES_PX = 28;

  private final Chart chart;
  private final PlotTheme theme;
  private final SvgInk ink = new SvgInk();
  private final Lanes lanes;
  private final int height;
  private final int shownHeight;
  private final Box box;

  SvgSheet(Chart chart, PlotTheme theme) {
    this(
        chart,
        theme,
        chart.square() ? SQUARE_HEIGHT : HEIGHT,
        chart.square() ? SQUARE_HEIGHT : HEIGHT);
  }

  private SvgSheet(Chart chart, PlotTheme theme, int height, int shownHeight) {
    this.chart = chart;
    this.theme = theme;
    this.height = height;
    this.shownHeight = shownHeight;
    double bottom = height - 28;
    this.lanes = laneNames(chart, bottom - LANES_TOP - 20);
    double top = Math.max(43, LANES_TOP + LANE_PX * lanes.used() + 4);
    double right = chart.square() ? LEFT + bottom - top : RIGHT;
    this.box = new Box(LEFT, top, right, bottom);
  }

  /** Returns a sheet of 160 px; a square plot needs more room inside and is shown smaller. */
  static SvgSheet ofLow(Chart chart, PlotTheme theme) {
    return new SvgSheet(chart, theme, chart.square() ? LOW_SQUARE_HEIGHT : LOW_HEIGHT, LOW_HEIGHT);
  }

  String draw(String name) {
    ink.open(WIDTH, height, shownHeight, name);
    ink.rect(new Box(0, 0, WIDTH, height), fill(theme.ground()));
    heading();
    ink.rect(box, fill(theme.plate()));
    bands();
    grid();
    LabelField field = new LabelField(box);
    across(chart.baseline(), stroke(theme.quietInk(), ".8"), field);
    across(chart.level(), stroke(theme.ink(), ".9") + " stroke-dasharray=\"1.5 2.5\"", field);
    washes();
    guides(field);
    List<Ridge> ridges = curves(field);
    new SvgStems(ink, theme, chart, box).draw(field);
    new SvgBars(ink, theme, chart, box).draw();
    frame();
    words(field, ridges);
    notes();
    key();
    return ink.close();
  }

  private static Lanes laneNames(Chart chart, double squareSide) {
    double width = chart.square() ? squareSide : RIGHT - LEFT;
    double unitEnd = chart.square() ? 16 + Lettering.width(chart.y().unit(), 10) + 8 : LEFT;
    Lanes lanes = new Lanes(Math.max(LEFT, unitEnd), RIGHT, -1, MOST_LANES);
    for (Chart.Band band : chart.bands()) {
      double middle = (chart.x().fraction(band.low()) + chart.x().fraction(band.high())) / 2;
      double extent = width * (chart.x().fraction(band.high()) - chart.x().fraction(band.low()));
      addName(lanes, band.name(), LEFT + width * middle, extent);
    }
    for (Chart.Guide guide : chart.guides()) {
      addName(lanes, guide.name(), LEFT + width * chart.x().fraction(guide.at()), 0);
    }
    return lanes;
  }

  private static void addName(Lanes lanes, String name, double centre, double extent) {
    String words = laneWords(name);
    lanes.add(words, centre, Math.max(extent, Lettering.width(words, 10) + 8));
  }

  private static String laneWords(String name) {
    return Lettering.fitted(Lettering.oneLine(name), 10, 200);
  }

  private void heading() {
    String caption = Lettering.fitted(Lettering.oneLine(chart.caption()), 11, 240);
    double room = WIDTH - 16 - 16 - Lettering.width(caption, 11) - 16;
    ink.text(
        16,
        18,
        Lettering.fitted(Lettering.oneLine(chart.title()), 15, room),
        "font-size=\"13\" font-weight=\"bold\" " + fill(theme.ink()));
    ink.text(RIGHT, 18, caption, "font-size=\"11\" text-anchor=\"end\" " + fill(theme.quietInk()));
    ink.openGroup("font-size=\"10\" " + fill(theme.quietInk()));
    for (Lanes.Placed placed : lanes.placed()) {
      ink.text(
          placed.left() + placed.width() / 2,
          LANES_TOP + LANE_PX * placed.lane() + 9,
          placed.name(),
          "text-anchor=\"middle\"");
    }
    ink.closeGroup();
  }

  private void bands() {
    boolean other = false;
    double[] ends = new double[4 * chart.bands().size()];
    int n = 0;
    for (Chart.Band band : chart.bands()) {
      double left = box.atX(chart.x().fraction(band.low()));
      double right = box.atX(chart.x().fraction(band.high()));
      ink.rect(
          new Box(left, box.top(), right, box.bottom()),
          fill(other ? theme.otherZone() : theme.zone()) + " fill-opacity=\".7\"");
      other = !other;
      n = underline(ends, n, band.name(), left + 1.5, right - 1.5);
    }
    ink.lines(ends, n, stroke(theme.quietInk(), ".7"));
  }

  /** Draws how far a zone reaches under its name, for zones may lie over one another. */
  private int underline(double[] ends, int from, String name, double left, double right) {
    for (Lanes.Placed placed : lanes.placed()) {
      if (placed.name().equals(laneWords(name))
          && placed.left() <= right
          && placed.left() + placed.width() >= left) {
        double y = LANES_TOP + LANE_PX * placed.lane() + 12.5;
        ends[from] = left;
        ends[from + 1] = y;
        ends[from + 2] = right;
        ends[from + 3] = y;
        return from + 4;
      }
    }
    return from;
  }

  private void grid() {
    int count = 4 * (chart.x().fineLines().size() + chart.x().ticks().size());
    double[] ends = new double[Math.max(count, 4 * chart.y().ticks().size())];
    int n = 0;
    Samples fine = chart.x().fineLines();
    for (int i = 0; i < fine.size(); i++) {
      n = vertical(ends, n, fine.get(i));
    }
    if (chart.bars().isEmpty() && fine.size() < chart.x().ticks().size()) {
      for (Axis.Tick tick : chart.x().ticks()) {
        n = vertical(ends, n, tick.at());
      }
    }
    String stroke = stroke(theme.grid(), ".7");
    ink.lines(ends, n, stroke);
    n = 0;
    for (Axis.Tick tick : chart.y().ticks()) {
      double y = box.atY(chart.y().fraction(tick.at()));
      ends[n++] = box.left();
      ends[n++] = y;
      ends[n++] = box.right();
      ends[n++] = y;
    }
    ink.lines(ends, n, stroke);
    if (chart.square()) {
      ink.line(box.left(), box.bottom(), box.right(), box.top(), stroke(theme.quietInk(), ".8"));
    }
  }

  /** Draws a line across at some height, if there is one, that words keep clear of. */
  private void across(double height, String line, LabelField field) {
    if (!Double.isNaN(height)) {
      double y = box.atY(chart.y().fraction(height));
      ink.line(box.left(), y, box.right(), y, line);
      field.block(new Box(box.left(), y - 0.5, box.right(), y + 0.5));
    }
  }

  private int vertical(double[] ends, int from, double at) {
    double x = box.atX(chart.x().fraction(at));
    ends[from] = x;
    ends[from + 1] = box.top();
    ends[from + 2] = x;
    ends[from + 3] = box.bottom();
    return from + 4;
  }

  private void washes() {
    for (Curve curve : chart.curves()) {
      if (curve.role() == CurveRole.STAGE && chart.square()) {
        SvgWashes.besideDiagonal(ink, theme, curve, chart, box);
        return;
      }
      if (curve.role() == CurveRole.STAGE && !Double.isNaN(chart.baseline())) {
        SvgWashes.besideBaseline(ink, theme, curve, chart, box);
        return;
      }
    }
  }

  private void guides(LabelField field) {
    for (Chart.Guide guide : chart.guides()) {
      double x = box.atX(chart.x().fraction(guide.at()));
      ink.line(
          x,
          box.top() - 3,
          x,
          box.bottom(),
          stroke(theme.ink(), ".9") + " stroke-dasharray=\"1.5 2.5\"");
      field.block(new Box(x - 1, box.top(), x + 1, box.bottom()));
    }
    if (chart.square()) {
      for (Chart.Mark mark : chart.marks()) {
        double x = box.atX(chart.x().fraction(mark.x()));
        double y = box.atY(chart.y().fraction(mark.y()));
        ink.lines(
            new double[] {x, y, x, box.bottom(), x, y, box.left(), y},
            8,
            stroke(theme.ink(), ".8"));
      }
    }
  }

  /** Draws the stage last, over the others, but returns the courses in the curves' order. */
  private List<Ridge> curves(LabelField field) {
    List<Ridge> ridges = new ArrayList<>();
    List<List<PointRun>> lines = new ArrayList<>();
    for (Curve curve : chart.curves()) {
      List<PointRun> runs = Strokes.lines(curve, chart.x(), chart.y(), box);
      lines.add(runs);
      ridges.add(field.add(runs));
    }
    for (boolean stage : new boolean[] {false, true}) {
      for (int i = 0; i < lines.size(); i++) {
        CurveRole role = chart.curves().get(i).role();
        if ((role == CurveRole.STAGE) == stage) {
          ink.curve(lines.get(i), SvgLines.of(theme, chart.curves(), i));
        }
      }
    }
    return ridges;
  }

  private void frame() {
    ink.openGroup(fill(theme.ink()));
    boolean dark = true;
    double from = box.left();
    for (Axis.Tick tick : chart.bars().isEmpty() ? chart.x().ticks() : List.<Axis.Tick>of()) {
      double to = box.atX(chart.x().fraction(tick.at()));
      dark = piece(new Box(from, box.bottom(), to, box.bottom() + STRIP_PX), to - from, dark);
      from = to;
    }
    piece(
        new Box(from, box.bottom(), box.right(), box.bottom() + STRIP_PX),
        chart.bars().isEmpty() ? box.right() - from : 0,
        dark);
    dark = true;
    from = box.bottom();
    for (Axis.Tick tick : chart.y().ticks()) {
      double to = box.atY(chart.y().fraction(tick.at()));
      dark = piece(new Box(box.left() - STRIP_PX, to, box.left(), from), from - to, dark);
      from = to;
    }
    piece(new Box(box.left() - STRIP_PX, box.top(), box.left(), from), from - box.top(), dark);
    ink.closeGroup();
    String line = "fill=\"none\" " + stroke(theme.ink(), ".8");
    ink.rect(new Box(box.left(), box.bottom(), box.right(), box.bottom() + STRIP_PX), line);
    ink.rect(new Box(box.left() - STRIP_PX, box.top(), box.left(), box.bottom()), line);
    ink.rect(box, line);
    scales();
  }

  private boolean piece(Box piece, double length, boolean dark) {
    if (length < 0.5) {
      return dark;
    }
    if (dark) {
      ink.rect(piece, "");
    }
    return !dark;
  }

  private void scales() {
    ink.openGroup("font-size=\"11\" " + fill(theme.quietInk()) + " text-anchor=\"middle\"");
    double rowY = box.bottom() + STRIP_PX + 13;
    for (Axis.Tick tick : chart.x().ticks()) {
      ink.text(box.atX(chart.x().fraction(tick.at())), rowY, tick.label(), "");
    }
    ink.closeGroup();
    ink.openGroup("font-size=\"11\" " + fill(theme.quietInk()) + " text-anchor=\"end\"");
    for (Axis.Tick tick : chart.y().ticks()) {
      ink.text(box.left() - 9, box.atY(chart.y().fraction(tick.at())) + 4, tick.label(), "");
    }
    String small = "font-size=\"10\"";
    if (chart.square()) {
      ink.text(16, box.top() - 9, chart.y().unit(), small + " text-anchor=\"start\"");
      ink.text(box.right() + 14, rowY, chart.x().unit(), small + " text-anchor=\"start\"");
    } else {
      ink.text(box.left() - 9, box.top() - 9, chart.y().unit(), small);
      ink.text(box.left() - 14, rowY, chart.x().unit(), small);
    }
    ink.closeGroup();
  }

  private void words(LabelField field, List<Ridge> ridges) {
    SvgLabels labels = new SvgLabels(ink, theme, field);
    for (Chart.Mark mark : chart.marks()) {
      double x = box.atX(chart.x().fraction(mark.x()));
      double y = box.atY(chart.y().fraction(mark.y()));
      field.block(new Box(x - 5, y - 5, x + 5, y + 5));
    }
    // There is most room to the right of the last, so it gets its word first.
    List<Chart.Mark> marks = new ArrayList<>(chart.marks());
    if (!Double.isNaN(chart.level())) {
      marks.sort(Comparator.comparingDouble(Chart.Mark::x).reversed());
    }
    for (Chart.Mark mark : marks) {
      double x = box.atX(chart.x().fraction(mark.x()));
      double y = box.atY(chart.y().fraction(mark.y()));
      ink.circle(x, y, 3.3, fill(theme.plate()) + " " + stroke(theme.ink(), "1.5"));
      labels.besideMark(x, y, Lettering.oneLine(mark.label()));
    }
    for (int i = 0; i < chart.curves().size() && !chart.square(); i++) {
      Curve curve = chart.curves().get(i);
      labels.alongCurve(
          Lettering.fitted(Lettering.oneLine(curve.label()), 11, box.width() / 2),
          theme.ofRole(curve.role()),
          SvgLines.of(theme, chart.curves(), i),
          ridges.get(i));
    }
  }

  /** Names the lines of a square plot beside it. */
  private void key() {
    if (!chart.square()) {
      return;
    }
    SvgKey key = new SvgKey(ink, box.right() + NOTES_PX, RIGHT);
    for (int i = 0; i < chart.curves().size(); i++) {
      Curve curve = chart.curves().get(i);
      key.add(curve.label(), theme.ofRole(curve.role()), SvgLines.of(theme, chart.curves(), i));
    }
    key.add("out = in", theme.quietInk(), stroke(theme.quietInk(), ".8"));
    key.draw(box.bottom() - 2);
  }

  private void notes() {
    double x = box.right() + NOTES_PX;
    double y = box.top() + 30;
    for (Chart.Note note : chart.notes()) {
      ink.text(
          x,
          y,
          Lettering.fitted(Lettering.oneLine(note.term()), 11, RIGHT - x),
          "font-size=\"11\" " + fill(theme.quietInk()));
      ink.text(
          x, y + 20, note.reading(), "font-size=\"16\" font-weight=\"bold\" " + fill(theme.ink()));
      y += 48;
    }
  }

  private static String fill(String colour) {
    return "fill=\"" + colour + "\"";
  }

  private static String stroke(String colour, String width) {
    return "stroke=\"" + colour + "\" stroke-width=\"" + width + "\"";
  }
}
