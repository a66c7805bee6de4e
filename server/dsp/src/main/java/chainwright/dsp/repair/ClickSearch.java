package chainwright.dsp.repair;

/**
 * Finds clicks in a frame: short runs of samples that neither those before nor those after them let
 * expect.
 *
 * <p>Source: S. V. Vaseghi, P. J. W. Rayner, "Detection and Suppression of Impulsive Noise in
 * Speech Communication Systems", IEE Proceedings I 137(1), 1990; S. J. Godsill, P. J. W. Rayner,
 * Digital Audio Restoration, 1998, chapter 5 (errors of linear prediction against a threshold);
 * from memory. What tells a click from the pulses of a voice and the beginning of a sound is ours.
 */
final class ClickSearch {

  /** How far an error must lie above the usual ones, by their median and by their 95 %. */
  private static final double OVER_DEVIATION = 8;

  private static final double OVER_LARGE = 7;

  /** The median of |x| of a Gaussian x, in its deviations. */
  private static final double MEDIAN = 0.6745;

  /** The same for the ends of a click. */
  private static final double EDGE_OVER_DEVIATION = 3.5;

  private static final double EDGE_OVER_LARGE = 1.5;

  /** As many others in one frame, of at least this share of its strength, are a sound's pulses. */
  private static final int PULSES = 2;

  private static final double ALIKE = 0.4;

  /** How much the level [dB] and the errors may differ between before and after. */
  private static final double MOST_RATIO_OF_POWERS = Math.pow(10, 12 / 10.0);

  /** What the ends of a click may hide below the noise [samples]. */
  private static final int MARGIN = 2;

  private final int order;
  private final int around;
  private final double[] ranked;
  private final int[] starts;
  private final int[] ends;
  private final double[] peaks;
  private double threshold;
  private double edge;

  /**
   * Prepares a search.
   *
   * @param order that of the prediction
   * @param frameLength the length of a frame
   * @param around over how many samples before and after levels are compared
   */
  ClickSearch(int order, int frameLength, int around) {
    this.order = order;
    this.around = around;
    ranked = new double[frameLength];
    starts = new int[frameLength];
    ends = new int[frameLength];
    peaks = new double[frameLength];
  }

  /** Is told of a click: its first sample and the one after its last. */
  @FunctionalInterface
  interface Found {
    void click(int from, int to);
  }

  /**
   * Looks for what may be clicks, roughly: from where each begins to where the longest would end.
   *
   * @param errors those of the prediction
   * @param longest the longest click that is meant
   * @param found is told of each
   * @return whether there are any
   */
  boolean suspect(double[] errors, int longest, Found found) {
    threshold(errors);
    int count = group(errors);
    int last = errors.length - 2 * order;
    boolean isAny = false;
    for (int i = 0; i < count; i++) {
      if (starts[i] > 2 * order && ends[i] < last && !isPulse(i, count)) {
        int end = Math.min(last, Math.max(ends[i], starts[i] + longest));
        // Errors go on behind a click for as long as the prediction remembers it.
        if (end - starts[i] <= longest + order) {
          found.click(starts[i] - MARGIN, Math.min(end, starts[i] + longest + order / 2));
          isAny = true;
        }
      }
    }
    return isAny;
  }

  /**
   * Looks for clicks that begin in the middle half of a frame.
   *
   * @param frame the samples
   * @param prediction what was fitted to them without what may be clicks
   * @param errors its errors
   * @param longest the longest click that is meant
   * @param found is told of each
   */
  void search(
      double[] frame, LinearPrediction prediction, double[] errors, int longest, Found found) {
    threshold(errors);
    int count = group(errors);
    int from = frame.length / 4;
    int to = frame.length - from;
    for (int i = 0; i < count; i++) {
      if (starts[i] >= from && starts[i] < to && !isPulse(i, count)) {
        int first = first(errors, starts[i]);
        int last = last(frame, prediction, first, ends[i]);
        int start = first - MARGIN;
        int end = last + 1 + MARGIN;
        if (last + 1 - first <= longest && isSteady(frame, errors, start, end)) {
          found.click(start, end);
        }
      }
    }
  }

  private void threshold(double[] errors) {
    int count = errors.length - order;
    System.arraycopy(errors, order, ranked, 0, count);
    double deviation = OrderStatistic.at(ranked, count, count / 2) / MEDIAN;
    double large = OrderStatistic.at(ranked, count, (int) (count * 0.95));
    threshold = Math.max(OVER_DEVIATION * deviation, OVER_LARGE * large);
    edge = Math.max(EDGE_OVER_DEVIATION * deviation, EDGE_OVER_LARGE * large);
  }

  /** Finds runs of errors above the threshold; what lies no further apart than the order is one. */
  private int group(double[] errors) {
    int count = 0;
    int last = Integer.MIN_VALUE / 2;
    for (int n = order; n < errors.length - order - MARGIN; n++) {
      if (errors[n] > threshold) {
        if (n - last > order) {
          starts[count] = n;
          peaks[count] = 0;
          count++;
        }
        ends[count - 1] = n;
        peaks[count - 1] = Math.max(peaks[count - 1], errors[n]);
        last = n;
      }
    }
    return count;
  }

  private boolean isPulse(int click, int count) {
    int alike = 0;
    for (int i = 0; i < count; i++) {
      if (i != click && peaks[i] > ALIKE * peaks[click]) {
        alike++;
      }
    }
    return alike >= PULSES;
  }

  private int first(double[] errors, int start) {
    int first = start;
    for (int n = start - 1; n >= Math.max(order + MARGIN, start - order / 4); n--) {
      if (errors[n] > edge) {
        first = n;
      }
    }
    return first;
  }

  /**
   * Finds the last sample of a click. Forward errors go on for as long as the prediction remembers
   * it; backward ones end with it, and do not pause for long within it.
   */
  private int last(double[] frame, LinearPrediction prediction, int first, int end) {
    int last = first;
    for (int n = first + 1; n <= Math.min(end, last + order / 2); n++) {
      if (prediction.backwardError(frame, n) > edge) {
        last = n;
      }
    }
    return last;
  }

  /** Whether the sound goes on behind the click as it was before. */
  private boolean isSteady(double[] frame, double[] errors, int start, int end) {
    int before = Math.max(order, start - around);
    int clear = end + order;
    int after = Math.min(frame.length, clear + around);
    return isAlike(power(frame, before, start), power(frame, end, after))
        && isAlike(power(errors, before, start), power(errors, clear, after));
  }

  private static boolean isAlike(double a, double b) {
    return a <= MOST_RATIO_OF_POWERS * b && b <= MOST_RATIO_OF_POWERS * a;
  }

  private static double power(double[] values, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += values[i] * values[i];
    }
    return sum / (to - from);
  }
}
