package chainwright.app.plot;

import java.util.List;

/** Numbers the branches of a plot, for the eye cannot tell thin lines of dots apart. */
final class BranchNumbers {

  private static final int PLACES = 60;

  private BranchNumbers() {}

  /** Returns the number of a branch among the branches, from 1; 0 for another curve. */
  static int of(List<Curve> curves, int index) {
    if (curves.get(index).role() != CurveRole.BRANCH) {
      return 0;
    }
    int number = 0;
    for (int i = 0; i <= index; i++) {
      number += curves.get(i).role() == CurveRole.BRANCH ? 1 : 0;
    }
    return number;
  }

  /**
   * Returns where the number of a branch stands best: where the curve is on the sheet and the next
   * other curve farthest away, the middle of the sheet before its edges.
   *
   * @return the place on the horizontal axis; NaN if the curve is nowhere on the sheet
   */
  static double place(List<Curve> curves, int index, Axis x, Axis y) {
    double best = Double.NaN;
    double most = Double.NEGATIVE_INFINITY;
    double[][] heights = new double[curves.size()][];
    for (int i = 0; i < heights.length; i++) {
      heights[i] = heights(curves.get(i), x, y);
    }
    for (int place = 1; place < PLACES; place++) {
      double own = heights[index][place];
      if (!(own > 0.02 && own < 0.98)) {
        continue;
      }
      double room = 1;
      for (int i = 0; i < heights.length; i++) {
        double distance = Math.abs(heights[i][place] - own);
        room = i != index && distance < room ? distance : room;
      }
      double offCentre = Math.abs(place - PLACES / 2.0) / PLACES;
      double worth = Math.min(room, 0.25) - 0.1 * offCentre;
      if (worth > most) {
        most = worth;
        best = x.at((double) place / PLACES);
      }
    }
    return best;
  }

  /** Returns how high a curve lies at each place, in shares of the vertical axis. */
  private static double[] heights(Curve curve, Axis x, Axis y) {
    double[] heights = new double[PLACES + 1];
    int next = 0;
    for (int place = 0; place <= PLACES; place++) {
      while (next < curve.x().size() - 1
          && x.fraction(curve.x().get(next)) < (double) place / PLACES) {
        next++;
      }
      heights[place] = curve.isEmpty() ? Double.NaN : y.fraction(curve.y().get(next));
    }
    return heights;
  }
}
