package chainwright.app.plot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds room for words on the plot: clear of curves, of other words and of the frame if it can be.
 */
final class LabelField {

  /** A place for words. */
  record Spot(Box box, String anchor, double bias) {

    double textX() {
      return anchor.equals("end") ? box.right() : box.left();
    }
  }

  /** The place chosen, and whether a curve or another word runs through it. */
  record Choice(Spot spot, boolean crowded) {}

  private static final double COLUMN_PX = 2;
  private static final double CLEARANCE_PX = 2;
  private static final double WORD_GAP_PX = 6;
  private static final double OUTSIDE_COST = 1e6;
  private static final double OVERLAP_COST = 3;
  private static final double CROSSING_COST = 12;

  private final Box area;
  private final int columns;
  private final List<Box> taken = new ArrayList<>();
  private final List<Ridge> ridges = new ArrayList<>();

  /** Makes an empty field. */
  LabelField(Box area) {
    this.area = area;
    this.columns = (int) Math.ceil(area.width() / COLUMN_PX) + 1;
  }

  Box area() {
    return area;
  }

  void block(Box box) {
    taken.add(box);
  }

  /** Makes the field know a curve, and returns its course for placing its own name. */
  Ridge add(List<PointRun> runs) {
    Ridge ridge = new Ridge(area.left(), columns);
    for (PointRun run : runs) {
      ridge.add(run);
    }
    ridges.add(ridge);
    return ridge;
  }

  /** Returns the cheapest of some places and takes it. */
  Choice choose(List<Spot> spots) {
    Spot best = spots.get(0);
    double least = Double.POSITIVE_INFINITY;
    double leastCrowding = 0;
    for (Spot spot : spots) {
      if (spot.bias() >= least) {
        continue;
      }
      double crowding = crowding(spot.box());
      double cost = spot.bias() + crowding;
      if (cost < least) {
        least = cost;
        leastCrowding = crowding;
        best = spot;
      }
    }
    Box box = best.box();
    taken.add(
        new Box(box.left() - WORD_GAP_PX, box.top(), box.right() + WORD_GAP_PX, box.bottom()));
    return new Choice(best, leastCrowding > 0);
  }

  /** Returns how near the next other curve passes a curve at some x, infinity for none. */
  double nearest(Ridge ridge, double x) {
    double middle = ridge.middle(x);
    double nearest = Double.POSITIVE_INFINITY;
    for (Ridge other : ridges) {
      if (other != ridge) {
        double distance = Math.abs(other.middle(x) - middle);
        nearest = distance < nearest ? distance : nearest;
      }
    }
    return nearest;
  }

  private double crowding(Box box) {
    double cost = area.contains(box) ? 0 : OUTSIDE_COST;
    for (Box other : taken) {
      double overlap = box.overlap(other);
      cost += overlap > 0 ? 150 + OVERLAP_COST * overlap : 0;
    }
    for (Ridge ridge : ridges) {
      cost += CROSSING_COST * ridge.columnsThrough(box, CLEARANCE_PX);
    }
    return cost;
  }

  /** The highest and lowest place of a curve in each narrow column of the plot. */
  static final class Ridge {

    private final double left;
    private final double[] highest;
    private final double[] lowest;

    private Ridge(double left, int columns) {
      this.left = left;
      this.highest = new double[columns];
      this.lowest = new double[columns];
      Arrays.fill(highest, Double.POSITIVE_INFINITY);
      Arrays.fill(lowest, Double.NEGATIVE_INFINITY);
    }

    private void add(PointRun run) {
      for (int i = 0; i + 1 < run.size(); i++) {
        double x0 = run.x(i);
        double x1 = run.x(i + 1);
        double slope = x1 > x0 ? (run.y(i + 1) - run.y(i)) / (x1 - x0) : 0;
        cover(x0, run.y(i));
        cover(x1, run.y(i + 1));
        for (int column = column(x0) + 1; column <= column(x1); column++) {
          double x = left + column * COLUMN_PX;
          double y = run.y(i) + slope * (x - x0);
          include(column - 1, y);
          include(column, y);
        }
      }
    }

    private void cover(double x, double y) {
      include(column(x), y);
    }

    private void include(int column, double y) {
      highest[column] = Math.min(highest[column], y);
      lowest[column] = Math.max(lowest[column], y);
    }

    private int column(double x) {
      return Math.max(0, Math.min(highest.length - 1, (int) ((x - left) / COLUMN_PX)));
    }

    /** Returns the middle of the curve at some x, NaN where there is none. */
    double middle(double x) {
      return (highest[column(x)] + lowest[column(x)]) / 2;
    }

    /** Returns the highest place between two x, positive infinity where there is no curve. */
    double highestBetween(double from, double to) {
      double y = Double.POSITIVE_INFINITY;
      for (int column = column(from); column <= column(to); column++) {
        y = Math.min(y, highest[column]);
      }
      return y;
    }

    /** Returns the lowest place between two x, negative infinity where there is no curve. */
    double lowestBetween(double from, double to) {
      double y = Double.NEGATIVE_INFINITY;
      for (int column = column(from); column <= column(to); column++) {
        y = Math.max(y, lowest[column]);
      }
      return y;
    }

    private int columnsThrough(Box box, double clearance) {
      int through = 0;
      for (int column = column(box.left()); column <= column(box.right()); column++) {
        if (highest[column] <= box.bottom() + clearance
            && lowest[column] >= box.top() - clearance) {
          through++;
        }
      }
      return through;
    }
  }
}
