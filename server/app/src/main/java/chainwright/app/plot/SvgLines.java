package chainwright.app.plot;

import java.util.List;

/** Gives each curve of an SVG plot its ink, weight and dash. */
final class SvgLines {

  private static final String[] BRANCH_DASHES = {"", "9 2.5", "4 2.5", "11 2.5 2 2.5", "2 2"};

  private SvgLines() {}

  /** Returns the presentation attributes of one of the curves. */
  static String of(PlotTheme theme, List<Curve> curves, int index) {
    CurveRole role = curves.get(index).role();
    String dash =
        switch (role) {
          case STAGE -> "stroke-width=\"2.2\"";
          case CHAIN_SO_FAR -> "stroke-width=\"1.7\" stroke-dasharray=\"6 3.5\"";
          case COMPARISON -> "stroke-width=\"1.5\" stroke-dasharray=\"1.5 3\"";
          case RETURN -> "stroke-width=\"1.9\" stroke-dasharray=\"12 4\"";
          case BRANCH -> "stroke-width=\"1.2\"" + dashOf(BranchNumbers.of(curves, index));
        };
    return "fill=\"none\" stroke=\"" + theme.ofRole(role) + "\" stroke-linejoin=\"round\" " + dash;
  }

  private static String dashOf(int number) {
    String dash = BRANCH_DASHES[(number - 1) % BRANCH_DASHES.length];
    return dash.isEmpty() ? "" : " stroke-dasharray=\"" + dash + "\"";
  }
}
