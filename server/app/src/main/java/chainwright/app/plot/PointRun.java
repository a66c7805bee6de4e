package chainwright.app.plot;

import java.util.Arrays;

/** A growing line of points on the sheet. */
final class PointRun {

  private double[] xy = new double[64];
  private int size;

  int size() {
    return size;
  }

  double x(int index) {
    return xy[2 * index];
  }

  double y(int index) {
    return xy[2 * index + 1];
  }

  void add(double x, double y) {
    if (2 * size == xy.length) {
      xy = Arrays.copyOf(xy, 2 * xy.length);
    }
    xy[2 * size] = x;
    xy[2 * size + 1] = y;
    size++;
  }

  /**
   * Returns a line with fewer points that leaves this one nowhere by more than the tolerance.
   *
   * <p>Source: D. Douglas, T. Peucker, "Algorithms for the reduction of the number of points
   * required to represent a digitized line", Cartographica 10(2), 1973 (from memory).
   */
  PointRun simplified(double tolerance) {
    if (size < 3) {
      return this;
    }
    boolean[] kept = new boolean[size];
    kept[0] = true;
    kept[size - 1] = true;
    int[] open = new int[2 * size];
    int depth = 0;
    open[depth++] = 0;
    open[depth++] = size - 1;
    while (depth > 0) {
      int last = open[--depth];
      int first = open[--depth];
      int farthest = farthest(first, last, tolerance);
      if (farthest > 0) {
        kept[farthest] = true;
        open[depth++] = first;
        open[depth++] = farthest;
        open[depth++] = farthest;
        open[depth++] = last;
      }
    }
    PointRun result = new PointRun();
    for (int i = 0; i < size; i++) {
      if (kept[i]) {
        result.add(x(i), y(i));
      }
    }
    return result;
  }

  /** Returns the point farthest from the chord if it lies beyond the tolerance, else 0. */
  private int farthest(int first, int last, double tolerance) {
    double x0 = x(first);
    double y0 = y(first);
    double dx = x(last) - x0;
    double dy = y(last) - y0;
    double length = dx * dx + dy * dy;
    int farthest = 0;
    double most = tolerance * tolerance;
    for (int i = first + 1; i < last; i++) {
      double px = x(i) - x0;
      double py = y(i) - y0;
      double along = length == 0 ? 0 : Math.max(0, Math.min(1, (px * dx + py * dy) / length));
      double ex = px - along * dx;
      double ey = py - along * dy;
      double distance = ex * ex + ey * ey;
      if (distance > most) {
        most = distance;
        farthest = i;
      }
    }
    return farthest;
  }
}
