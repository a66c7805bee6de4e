package chainwright.dsp.loudness;

import java.util.Arrays;

/**
 * How often each mean square came, in equal steps of its level.
 *
 * <p>Every step also sums the mean squares that fell into it, so that means over many steps are
 * exact, and a threshold inside a step is decided by that step's own mean. What lies above the
 * highest step is kept with it. A step takes 16 bytes, however much is added.
 */
final class PowerHistogram {

  private final double lowestPower;
  private final double lowestDb;
  private final int stepsPerDecibel;
  private final long[] counts;
  private final double[] sums;

  /** Makes an empty histogram of the mean squares above the one given. */
  PowerHistogram(double lowestPower, int rangeDecibels, int stepsPerDecibel) {
    this.lowestPower = lowestPower;
    this.stepsPerDecibel = stepsPerDecibel;
    counts = new long[rangeDecibels * stepsPerDecibel];
    sums = new double[counts.length];
    lowestDb = 10 * Math.log10(lowestPower);
  }

  /** Adds a mean square, unless it is not above the lowest. */
  void add(double power) {
    if (!(power > lowestPower)) {
      return;
    }
    double db = 10 * Math.log10(power) - lowestDb;
    int step = Math.max(0, (int) Math.min(db * stepsPerDecibel, counts.length - 1));
    counts[step]++;
    sums[step] += power;
  }

  /** Returns the mean of what lies above a mean square; NaN if nothing does. */
  double meanAbove(double power) {
    double sum = 0;
    long count = 0;
    for (int step = firstAbove(power); step < counts.length; step++) {
      sum += sums[step];
      count += counts[step];
    }
    return sum / count;
  }

  /**
   * Returns the mean square below which a share of those above a threshold lie; NaN if none does.
   *
   * <p>With n values in rising order, it is the one at round((n − 1) share) from 0.
   */
  double percentileAbove(double power, double share) {
    int first = firstAbove(power);
    long count = 0;
    for (int step = first; step < counts.length; step++) {
      count += counts[step];
    }
    if (count == 0) {
      return Double.NaN;
    }
    long wanted = Math.round((count - 1) * share);
    int step = first;
    for (long passed = counts[step]; passed <= wanted; passed += counts[step]) {
      step++;
    }
    return sums[step] / counts[step];
  }

  private int firstAbove(double power) {
    for (int step = 0; step < counts.length; step++) {
      if (counts[step] > 0 && sums[step] / counts[step] > power) {
        return step;
      }
    }
    return counts.length;
  }

  void reset() {
    Arrays.fill(counts, 0);
    Arrays.fill(sums, 0);
  }
}
