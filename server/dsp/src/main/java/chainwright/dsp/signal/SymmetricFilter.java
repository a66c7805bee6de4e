package chainwright.dsp.signal;

import java.util.Arrays;

/**
 * A filter of symmetric coefficients at work, with the room that it needs; linear in phase.
 *
 * <p>Each frame is summed in the same order whatever its neighbours, so that no block changes a
 * bit.
 */
final class SymmetricFilter {

  /*
   * Java's compiler computes several frames by one instruction only where all arrays of a loop are
   * read and written at one index. So a block is laid out in rows: row r holds the frames r, r + 8,
   * r + 16 ... counted from the first that the block needs, and frames that lie t apart stand at one
   * index of two rows. What does not fill a block is summed frame by frame.
   */

  private static final int PHASES = 8;
  private static final int LANES = 64;
  private static final int BLOCK = PHASES * LANES;

  private final double[] taps;
  private final int last;

  /** How many pairs of equal coefficients there are; 0 if all but the one in the middle are 0. */
  private final int pairs;

  /** The coefficient in the middle; 0 where there is none. */
  private final double centre;

  private final double[][] rows;
  private final double[][] sums = new double[PHASES][LANES];

  /**
   * Makes a filter.
   *
   * @param taps the coefficients, the same from either end, with a factor that they all get
   * @param scale the factor
   */
  SymmetricFilter(double[] taps, double scale) {
    this.taps = Arrays.stream(taps).map(tap -> scale * tap).toArray();
    last = taps.length - 1;
    int half = taps.length / 2;
    pairs = Arrays.stream(taps, 0, half).allMatch(tap -> tap == 0) ? 0 : half;
    centre = taps.length % 2 == 1 ? scale * taps[half] : 0;
    rows = new double[pairs == 0 ? 0 : PHASES + last][LANES];
  }

  /**
   * Filters.
   *
   * @param x the frames, of which as many as there are coefficients, less one, lie before the first
   * @param first the index of the first frame
   * @param out receives the frames, another array
   * @param at the index of the first there
   * @param step how far they lie apart there
   * @param count the number of frames
   */
  void process(double[] x, int first, double[] out, int at, int step, int count) {
    int done = 0;
    if (pairs > 0) {
      for (; done + BLOCK <= count; done += BLOCK) {
        layOut(x, first + done - last);
        sumRows();
        for (int q = 0; q < PHASES; q++) {
          double[] sum = sums[q];
          int from = at + step * (done + q);
          for (int l = 0; l < LANES; l++) {
            out[from + step * PHASES * l] = sum[l];
          }
        }
      }
    }
    if (pairs == 0) {
      for (int i = 0; i < count; i++) {
        out[at + step * i] = centre * x[first + i - last / 2];
      }
    } else {
      for (; done < count; done++) {
        out[at + step * done] = sum(x, first + done);
      }
    }
  }

  private void layOut(double[] x, int start) {
    for (int r = 0; r < PHASES; r++) {
      double[] row = rows[r];
      for (int l = 0; l < LANES; l++) {
        row[l] = x[start + r + PHASES * l];
      }
    }
    for (int r = PHASES; r < rows.length; r++) {
      System.arraycopy(rows[r - PHASES], 1, rows[r], 0, LANES - 1);
      rows[r][LANES - 1] = x[start + r + PHASES * (LANES - 1)];
    }
  }

  private void sumRows() {
    for (double[] sum : sums) {
      Arrays.fill(sum, 0);
    }
    int t = 0;
    for (; t + 1 < pairs; t += 2) {
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
    for (int q = 0; q < PHASES; q++) {
      if (t < pairs) {
        addPair(rows[q + last - t], rows[q + t], taps[t], sums[q]);
      }
      if (centre != 0) {
        add(rows[q + pairs], centre, sums[q]);
      }
    }
  }

  private static void addPairs(
      double[] a, double[] b, double tapOfAb, double[] c, double[] d, double tapOfCd, double[] to) {
    for (int i = 0; i < to.length; i++) {
      to[i] += tapOfAb * (a[i] + b[i]) + tapOfCd * (c[i] + d[i]);
    }
  }

  private static void addPair(double[] a, double[] b, double tap, double[] to) {
    for (int i = 0; i < to.length; i++) {
      to[i] += tap * (a[i] + b[i]);
    }
  }

  private static void add(double[] a, double tap, double[] to) {
    for (int i = 0; i < to.length; i++) {
      to[i] += tap * a[i];
    }
  }

  /** The sum of one frame, in the order of the rows. */
  private double sum(double[] x, int near) {
    int far = near - last;
    double sum = 0;
    int t = 0;
    for (; t + 1 < pairs; t += 2) {
      sum +=
          taps[t] * (x[near - t] + x[far + t]) + taps[t + 1] * (x[near - t - 1] + x[far + t + 1]);
    }
    if (t < pairs) {
      sum += taps[t] * (x[near - t] + x[far + t]);
    }
    if (centre != 0) {
      sum += centre * x[near - pairs];
    }
    return sum;
  }
}
