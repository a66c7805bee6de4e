package chainwright.app.plot;

/** Draws harmonics: odd ones solid, even ones hollow, each with its level on top. */
final class SvgBars {

  private static final double WIDEST_PX = 26;

  private final SvgInk ink;
  private final PlotTheme theme;
  private final Chart chart;
  private final Box box;

  SvgBars(SvgInk ink, PlotTheme theme, Chart chart, Box box) {
    this.ink = ink;
    this.theme = theme;
    this.chart = chart;
    this.box = box;
  }

  void draw() {
    if (chart.bars().isEmpty()) {
      return;
    }
    double half = Math.min(WIDEST_PX, 0.55 * box.width() / chart.x().range().span()) / 2;
    for (Chart.Bar bar : chart.bars()) {
      double x = box.atX(chart.x().fraction(bar.x()));
      double top = box.atY(chart.y().fraction(bar.top()));
      if (box.bottom() - top > 1) {
        shape(new Box(x - half, top, x + half, box.bottom()), bar.even());
      }
      ink.text(
          x,
          top - 4,
          bar.label(),
          "font-size=\"11\" text-anchor=\"middle\" fill=\"" + theme.ink() + "\"");
    }
    key(box.right() - 92, "odd", false);
    key(box.right() - 44, "even", true);
  }

  private void key(double x, String word, boolean even) {
    double y = box.top() - 13;
    shape(new Box(x, y, x + 9, y + 9), even);
    ink.text(x + 14, y + 8, word, "font-size=\"10\" fill=\"" + theme.quietInk() + "\"");
  }

  private void shape(Box shape, boolean even) {
    if (even) {
      Box inner =
          new Box(shape.left() + 0.8, shape.top() + 0.8, shape.right() - 0.8, shape.bottom() - 0.8);
      ink.rect(
          inner,
          "fill=\""
              + theme.plate()
              + "\" stroke=\""
              + theme.comparison()
              + "\" stroke-width=\"1.6\"");
    } else {
      ink.rect(shape, "fill=\"" + theme.stage() + "\"");
    }
  }
}
