package chainwright.app.plot;

/** Draws what comes once as a thin line with a head, and its level on top where there is room. */
final class SvgStems {

  /** Below this distance [px] heads would run together. */
  private static final double APART_PX = 7;

  private static final double GAP_PX = 5;

  private final SvgInk ink;
  private final PlotTheme theme;
  private final Chart chart;
  private final Box box;

  SvgStems(SvgInk ink, PlotTheme theme, Chart chart, Box box) {
    this.ink = ink;
    this.theme = theme;
    this.chart = chart;
    this.box = box;
  }

  void draw(LabelField field) {
    int count = chart.stems().size();
    if (count == 0) {
      return;
    }
    double[] ends = new double[4 * count];
    double nearest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < count; i++) {
      Chart.Stem stem = chart.stems().get(i);
      double x = box.atX(chart.x().fraction(stem.x()));
      double y = box.atY(chart.y().fraction(stem.top()));
      nearest = i == 0 ? nearest : Math.min(nearest, x - ends[4 * i - 4]);
      ends[4 * i] = x;
      ends[4 * i + 1] = box.bottom();
      ends[4 * i + 2] = x;
      ends[4 * i + 3] = y;
      field.block(new Box(x - 3.5, y - 3.5, x + 3.5, box.bottom()));
    }
    boolean apart = nearest >= APART_PX;
    ink.lines(
        ends,
        4 * count,
        "stroke=\"" + theme.stage() + "\" stroke-width=\"" + (apart ? "2" : ".8") + "\"");
    labels(ends, apart, field);
  }

  private void labels(double[] ends, boolean headed, LabelField field) {
    double free = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < chart.stems().size(); i++) {
      double x = ends[4 * i + 2];
      double y = ends[4 * i + 3];
      if (headed) {
        ink.circle(x, y, 2.8, "fill=\"" + theme.stage() + "\"");
      }
      String label = chart.stems().get(i).label();
      double half = Lettering.width(label, SvgLabels.SIZE_PX) / 2;
      double middle = Math.max(box.left() + half + 2, Math.min(box.right() - half - 2, x));
      if (middle - half < free) {
        continue;
      }
      free = middle + half + GAP_PX;
      Box words = new Box(middle - half, y - 14, middle + half, y - 4);
      field.block(words);
      if (!chart.curves().isEmpty()) {
        ink.rect(words, "fill=\"" + theme.plate() + "\" fill-opacity=\".85\"");
      }
      ink.text(
          middle,
          y - 5,
          label,
          "font-size=\"11\" text-anchor=\"middle\" fill=\"" + theme.ink() + "\"");
    }
  }
}
