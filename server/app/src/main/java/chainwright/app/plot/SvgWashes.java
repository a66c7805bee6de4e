package chainwright.app.plot;

/** Tints what a stage does: the shape between its curve and "nothing done". */
final class SvgWashes {

  private static final String THIN = "\" fill-opacity=\".38\"";

  private SvgWashes() {}

  static void besideBaseline(SvgInk ink, PlotTheme theme, Curve curve, Chart chart, Box box) {
    double base = box.atY(chart.y().fraction(chart.baseline()));
    for (PointRun run : Strokes.held(curve, chart.x(), chart.y(), box, box.top(), base)) {
      shape(ink, run, base, base, theme.above());
    }
    for (PointRun run : Strokes.held(curve, chart.x(), chart.y(), box, base, box.bottom())) {
      shape(ink, run, base, base, theme.below());
    }
  }

  /** Here "nothing done" is output = input, so the curve is held to the larger or smaller. */
  static void besideDiagonal(SvgInk ink, PlotTheme theme, Curve curve, Chart chart, Box box) {
    for (boolean above : new boolean[] {true, false}) {
      double[] held = new double[curve.x().size()];
      for (int i = 0; i < held.length; i++) {
        double in = curve.x().get(i);
        double out = curve.y().get(i);
        held[i] = Double.isNaN(out) ? out : above ? Math.max(in, out) : Math.min(in, out);
      }
      Curve side = new Curve("", curve.role(), curve.x(), Samples.of(held));
      for (PointRun run : Strokes.held(side, chart.x(), chart.y(), box, box.top(), box.bottom())) {
        shape(
            ink,
            run,
            diagonal(run.x(0), box),
            diagonal(run.x(run.size() - 1), box),
            above ? theme.above() : theme.below());
      }
    }
  }

  private static double diagonal(double x, Box box) {
    return box.bottom() - (x - box.left()) * box.height() / box.width();
  }

  private static void shape(
      SvgInk ink, PointRun run, double firstEdge, double lastEdge, String colour) {
    double most = 0;
    double width = run.x(run.size() - 1) - run.x(0);
    for (int i = 0; i < run.size(); i++) {
      double along = width > 0 ? (run.x(i) - run.x(0)) / width : 0;
      most = Math.max(most, Math.abs(run.y(i) - firstEdge - along * (lastEdge - firstEdge)));
    }
    if (most > 0.5) {
      ink.wash(run, firstEdge, lastEdge, "fill=\"" + colour + THIN);
    }
  }
}
