package chainwright.app.audiofile.flac;

/**
 * Chooses how residuals are divided and with what width each part is coded, and codes them.
 *
 * <p>Source: RFC 9639, section 9.2.7. The width is chosen by the mean of a part, of which the bits
 * are about n (1 + k) + sum / 2^k.
 */
final class RiceCode {

  private static final int MOST_PARTITION_ORDER = 6;
  private static final int MOST_WIDTH = 30;
  private static final int MOST_SHORT_WIDTH = 14;

  private final long[] sums = new long[1 << MOST_PARTITION_ORDER];
  private int[] widths = new int[1 << MOST_PARTITION_ORDER];
  private int[] tried = new int[1 << MOST_PARTITION_ORDER];
  private int partitionOrder;
  private long bits;

  /** Chooses for the residuals from the predictor's order on, and returns about how many bits. */
  long choose(long[] residual, int order, int count) {
    int finest = 0;
    while (finest < MOST_PARTITION_ORDER
        && count % (2 << finest) == 0
        && count >> (finest + 1) > order) {
      finest++;
    }
    sum(residual, order, count, finest);
    bits = Long.MAX_VALUE;
    for (int fineness = finest; fineness >= 0; fineness--) {
      tryOut(fineness, order, count);
      for (int i = 0; i < 1 << fineness >> 1; i++) {
        sums[i] = sums[2 * i] + sums[2 * i + 1];
      }
    }
    return bits;
  }

  private void sum(long[] residual, int order, int count, int fineness) {
    int size = count >> fineness;
    for (int part = 0; part < 1 << fineness; part++) {
      long sum = 0;
      for (int i = Math.max(part * size, order); i < (part + 1) * size; i++) {
        sum += fold(residual[i]);
      }
      sums[part] = sum;
    }
  }

  private void tryOut(int fineness, int order, int count) {
    int size = count >> fineness;
    long total = 6;
    int widest = 0;
    for (int part = 0; part < 1 << fineness; part++) {
      int samples = part == 0 ? size - order : size;
      int width = width(sums[part], samples);
      tried[part] = width;
      widest = Math.max(widest, width);
      total += (long) samples * (1 + width) + (sums[part] >>> width);
    }
    total += (long) parameterBits(widest) << fineness;
    if (total < bits) {
      bits = total;
      partitionOrder = fineness;
      int[] best = tried;
      tried = widths;
      widths = best;
    }
  }

  private static int width(long sum, int samples) {
    long mean = samples == 0 ? 0 : sum / samples;
    int width = Math.max(63 - Long.numberOfLeadingZeros(mean | 1), 0);
    return Math.min(width, MOST_WIDTH);
  }

  private static int parameterBits(int widest) {
    return widest > MOST_SHORT_WIDTH ? 5 : 4;
  }

  private static long fold(long residual) {
    return residual << 1 ^ residual >> 63;
  }

  /** Codes the residuals as chosen. */
  void write(BitWriter out, long[] residual, int order, int count) {
    int widest = 0;
    for (int part = 0; part < 1 << partitionOrder; part++) {
      widest = Math.max(widest, widths[part]);
    }
    int parameterBits = parameterBits(widest);
    out.write(parameterBits - 4, 2);
    out.write(partitionOrder, 4);
    int size = count >> partitionOrder;
    for (int part = 0; part < 1 << partitionOrder; part++) {
      int width = widths[part];
      out.write(width, parameterBits);
      for (int i = Math.max(part * size, order); i < (part + 1) * size; i++) {
        out.writeRice(fold(residual[i]), width);
      }
    }
  }
}
