package chainwright.dsp.dynamics;

/**
 * The largest of the last values of a row, in constant time on average.
 *
 * <p>Only values that may yet be the largest are kept: each new one drops those before it that are
 * not larger.
 */
public final class SlidingMaximum {

  private final int window;

  /** Values that may yet be the largest, falling; a ring, with the times that they came. */
  private final double[] values;

  private final long[] times;
  private int head;
  private int count;
  private long time;

  /**
   * Starts without values.
   *
   * @param window over how many values, the newest included; ≥ 1
   */
  public SlidingMaximum(int window) {
    this.window = window;
    values = new double[window];
    times = new long[window];
  }

  /**
   * Takes a value.
   *
   * @param value the value, not NaN
   * @return the largest of the window that ends with it
   */
  public double next(double value) {
    while (count > 0 && values[ring(head + count - 1)] <= value) {
      count--;
    }
    if (count > 0 && times[head] <= time - window) {
      head = ring(head + 1);
      count--;
    }
    int tail = ring(head + count);
    values[tail] = value;
    times[tail] = time;
    count++;
    time++;
    return values[head];
  }

  private int ring(int index) {
    return index >= window ? index - window : index;
  }

  /** Returns to the initial state, without values. */
  public void reset() {
    head = 0;
    count = 0;
    time = 0;
  }
}
