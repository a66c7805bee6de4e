package chainwright.app.plot;

import java.util.ArrayList;
import java.util.List;

/** Sets names above a plot in as few rows as keep them apart. */
final class Lanes {

  /** A name in its row; the width is that of the words. */
  record Placed(String name, int lane, double left, double width) {}

  private final double left;
  private final double right;
  private final double gap;
  private final int most;
  private final List<Placed> placed = new ArrayList<>();
  private int used;

  /** Makes empty rows between two edges, with a gap between names, and so many at most. */
  Lanes(double left, double right, double gap, int most) {
    this.left = left;
    this.right = right;
    this.gap = gap;
    this.most = most;
  }

  /** Puts a name near a place; a name that fits in no row is not set. */
  void add(String name, double centre, double width) {
    double start = Math.max(left, Math.min(right - width, centre - width / 2));
    for (int lane = 0; lane < most; lane++) {
      if (isFree(lane, start, width)) {
        placed.add(new Placed(name, lane, start, width));
        used = Math.max(used, lane + 1);
        return;
      }
    }
  }

  List<Placed> placed() {
    return placed;
  }

  int used() {
    return used;
  }

  private boolean isFree(int lane, double start, double width) {
    for (Placed other : placed) {
      if (other.lane == lane
          && start < other.left + other.width + gap
          && other.left < start + width + gap) {
        return false;
      }
    }
    return true;
  }
}
