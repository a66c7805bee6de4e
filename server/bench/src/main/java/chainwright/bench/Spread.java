package chainwright.bench;

import java.util.Arrays;
import java.util.Locale;

/** The median of some measurements, and the least and the most of them. */
record Spread(double median, double least, double most) {

  static Spread of(double[] measurements) {
    double[] sorted = measurements.clone();
    Arrays.sort(sorted);
    return new Spread(sorted[sorted.length / 2], sorted[0], sorted[sorted.length - 1]);
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%.3f (%.3f to %.3f)", median, least, most);
  }
}
