package chainwright.dsp.signal;

import java.util.Arrays;

/**
 * A filter of an even number of symmetric coefficients at work, with the room that it needs; linear
 * in phase.
 *
 * <p>Each frame is summed in the same order whatever its neighbours, so that no block changes a
 * bit.
 */
final class SymmetricFilter {

  /*
   * Java's compiler computes several frames by one instruction only where all arrays of a loop are
   * read and written at one index. So a block is laid out in rows: row r holds the frames r, r + 16,
   * r + 32 ... counted from the first that the block needs, and frames that lie t apart stand at one
   * index of two rows. What does not fill a block is summed frame by frame.
   */

  private static final int PHASES = 16;
  private static final int LANES = 64;
  private static final int BLOCK = PHASES * LANES;

  private final double[] taps;

  /** How far the first and the last coefficient lie apart. */
  private final int last;

  private final int inStep;
  private final int outStep;
  private final double[][] rows;
  private final double[][] sums = new double[PHASES][LANES];

  /**
   * Makes a filter.
   *
   * @param taps the coefficients, the same from either end
   * @param scale a factor that they all get
   * @param inStep how far the frames lie apart that it reads
   * @param outStep how far they lie apart where it writes
   */
  SymmetricFilter(double[] taps, double scale, int inStep, int outStep) {
    this.taps = Arrays.stream(taps, 0, taps.length / 2).map(tap -> scale * tap).toArray();
    last = taps.length - 1;
    this.inStep = inStep;
    this.outStep = outStep;
    rows = new double[PHASES + last][LANES];
  }

  /**
   * Filters.
   *
   * @param x the frames, of which as many as there are coefficients, less one, lie before the first
   * @param first the index of the first frame
   * @param out receives the frames, from its start on; another array
   * @param count the number of frames
   */
  void process(double[] x, int first, double[] out, int count) {
    int done = 0;
    for (; done + BLOCK <= count; done += BLOCK) {
      layOut(x, first + inStep * (done - last));
      sumRows();
      for (int q = 0; q < PHASES; q++) {
        double[] sum = sums[q];
        int to = outStep * (done + q);
        for (int l = 0; l < LANES; l++) {
          out[to + outStep * PHASES * l] = sum[l];
        }
      }
    }
    for (; done < count; done++) {
      out[outStep * done] = sum(x, first + inStep * done);
    }
  }

  private void layOut(double[] x, int start) {
    int step = inStep * PHASES;
    for (int r = 0; r < PHASES; r++) {
      double[] row = rows[r];
      int from = start + inStep * r;
      for (int l = 0; l < LANES; l++) {
        row[l] = x[from + step * l];
      }
    }
    for (int r = PHASES; r < rows.length; r++) {
      System.arraycopy(rows[r - PHASES], 1, rows[r], 0, LANES - 1);
      rows[r][LANES - 1] = x[start + inStep * r + step * (LANES - 1)];
    }
  }

  private void sumRows() {
    int pairs = taps.length;
    int t = pairs % 2;
    for (int q = 0; q < PHASES; q++) {
      if (t == 0) {
        Arrays.fill(sums[q], 0);
      } else {
        setPair(rows[q + last], rows[q], taps[0], sums[q]);
      }
    }
    // All phases of two pairs before the next two: what they read stays in the nearest cache.
    for (; t < pairs; t += 2) {
      for (int q = 0; q < PHASES; q++) {
        addPairs(
            rows[q + last - t],
            rows[q + t],
            taps[t],
            rows[q + last - t - 1],
            rows[q + t + 1],
            taps[t + 1],
            sums[q]);
      }
    }
  }

  private static void setPair(double[] a, double[] b, double tap, double[] to) {
    for (int i = 0; i < to.length; i++) {
      to[i] = tap * (a[i] + b[i]);
    }
  }

  private static void addPairs(
      double[] a, double[] b, double tapOfAb, double[] c, double[] d, double tapOfCd, double[] to) {
    for (int i = 0; i < to.length; i++) {
      to[i] += tapOfAb * (a[i] + b[i]) + tapOfCd * (c[i] + d[i]);
    }
  }

  /** The sum of one frame, in the order of the rows. */
  private double sum(double[] x, int near) {
    int far = near - inStep * last;
    int t = taps.length % 2;
    double sum = t == 0 ? 0 : taps[0] * (x[near] + x[far]);
    for (; t < taps.length; t += 2) {
      int at = inStep * t;
      sum +=
          taps[t] * (x[near - at] + x[far + at])
              + taps[t + 1] * (x[near - at - inStep] + x[far + at + inStep]);
    }
    return sum;
  }
}
