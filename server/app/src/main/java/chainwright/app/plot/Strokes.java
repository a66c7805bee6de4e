package chainwright.app.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * Puts a curve on the sheet: as lines cut at the frame, or as the closed shape between it and the
 * baseline.
 *
 * <p>A line that leaves the frame ends there and is not drawn along it, for that would show a floor
 * where there is none. An infinity next to a number is a line to the frame; NaN is a gap.
 */
final class Strokes {

  /** Far off the sheet, yet small enough for exact intersections. */
  private static final double FAR = 1e7;

  private Strokes() {}

  /** Returns the visible pieces of a curve. */
  static List<PointRun> lines(Curve curve, Axis x, Axis y, Box box) {
    List<PointRun> runs = new ArrayList<>();
    PointRun run = new PointRun();
    double lastX = Double.NaN;
    double lastY = Double.NaN;
    double lastValue = Double.NaN;
    for (int i = 0; i < curve.x().size(); i++) {
      double value = curve.y().get(i);
      double px = place(box.atX(x.fraction(curve.x().get(i))));
      double py = height(value, y, box);
      boolean gap = Double.isNaN(px) || Double.isNaN(py) || Double.isNaN(lastX);
      boolean bothInfinite = Double.isInfinite(value) && Double.isInfinite(lastValue);
      if (gap || bothInfinite || !addClipped(run, lastX, lastY, px, py, box)) {
        run = finish(runs, run);
      } else if (!inside(px, py, box)) {
        run = finish(runs, run);
      }
      boolean known = !Double.isNaN(px) && !Double.isNaN(py);
      lastX = known ? px : Double.NaN;
      lastY = known ? py : Double.NaN;
      lastValue = value;
    }
    finish(runs, run);
    return runs;
  }

  /**
   * Returns the visible pieces of a curve held to a strip of the sheet, with a point wherever it
   * enters or leaves the strip; each ends on the x it came from.
   */
  static List<PointRun> held(Curve curve, Axis x, Axis y, Box box, double top, double bottom) {
    List<PointRun> runs = new ArrayList<>();
    PointRun run = new PointRun();
    double lastX = Double.NaN;
    double lastY = Double.NaN;
    for (int i = 0; i < curve.x().size(); i++) {
      double px = place(box.atX(x.fraction(curve.x().get(i))));
      double py = height(curve.y().get(i), y, box);
      if (Double.isNaN(px) || Double.isNaN(py)) {
        run = finish(runs, run);
        lastX = Double.NaN;
        continue;
      }
      if (!Double.isNaN(lastX)) {
        addHeld(run, lastX, lastY, px, py, box, top, bottom);
      }
      lastX = px;
      lastY = py;
    }
    finish(runs, run);
    return runs;
  }

  private static void addHeld(
      PointRun run,
      double x0,
      double y0,
      double x1,
      double y1,
      Box box,
      double top,
      double bottom) {
    double left = Math.max(x0, box.left());
    double right = Math.min(x1, box.right());
    if (!(right >= left)) {
      return;
    }
    double slope = x1 > x0 ? (y1 - y0) / (x1 - x0) : 0;
    double yLeft = x1 > x0 ? y0 + slope * (left - x0) : y0;
    double yRight = x1 > x0 ? y0 + slope * (right - x0) : y1;
    if (run.size() == 0) {
      run.add(left, hold(yLeft, top, bottom));
    }
    if (slope != 0) {
      double first = slope > 0 ? top : bottom;
      double second = slope > 0 ? bottom : top;
      for (double edge : new double[] {first, second}) {
        double at = x0 + (edge - y0) / slope;
        if (at > left && at < right) {
          run.add(at, edge);
        }
      }
    }
    run.add(right, hold(yRight, top, bottom));
  }

  private static double hold(double y, double top, double bottom) {
    return Math.max(top, Math.min(bottom, y));
  }

  private static double place(double x) {
    return Math.max(-FAR, Math.min(FAR, x));
  }

  private static double height(double value, Axis y, Box box) {
    if (value == Double.NEGATIVE_INFINITY) {
      return box.bottom();
    }
    if (value == Double.POSITIVE_INFINITY) {
      return box.top();
    }
    return place(box.atY(y.fraction(value)));
  }

  private static boolean inside(double x, double y, Box box) {
    return x >= box.left() && x <= box.right() && y >= box.top() && y <= box.bottom();
  }

  private static PointRun finish(List<PointRun> runs, PointRun run) {
    if (run.size() == 0) {
      return run;
    }
    runs.add(run);
    return new PointRun();
  }

  /**
   * Adds the part of a segment inside the box; returns whether there is one.
   *
   * <p>Source: Y.-D. Liang, B. Barsky, "A new concept and method for line clipping", ACM
   * Transactions on Graphics 3(1), 1984 (from memory).
   */
  private static boolean addClipped(
      PointRun run, double x0, double y0, double x1, double y1, Box box) {
    double dx = x1 - x0;
    double dy = y1 - y0;
    double[] directions = {-dx, dx, -dy, dy};
    double[] distances = {x0 - box.left(), box.right() - x0, y0 - box.top(), box.bottom() - y0};
    double enter = 0;
    double leave = 1;
    for (int side = 0; side < 4; side++) {
      double direction = directions[side];
      if (direction == 0) {
        if (distances[side] < 0) {
          return false;
        }
      } else if (direction < 0) {
        enter = Math.max(enter, distances[side] / direction);
      } else {
        leave = Math.min(leave, distances[side] / direction);
      }
    }
    if (enter > leave) {
      return false;
    }
    if (run.size() == 0) {
      addHeldInside(run, x0 + enter * dx, y0 + enter * dy, box);
    }
    addHeldInside(run, x0 + leave * dx, y0 + leave * dy, box);
    return true;
  }

  /** Rounding may put an intersection a hair outside. */
  private static void addHeldInside(PointRun run, double x, double y, Box box) {
    run.add(hold(x, box.left(), box.right()), hold(y, box.top(), box.bottom()));
  }
}
