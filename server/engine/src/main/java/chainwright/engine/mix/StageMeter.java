package chainwright.engine.mix;

import chainwright.quantity.SampleRate;
import java.util.Arrays;

/**
 * Compares what goes into a stage with what comes out of it, window by window. The reductions go
 * into a histogram, so that memory does not grow with the length.
 */
final class StageMeter {

  /** How long a window is [ms]. */
  static final int WINDOW_MILLIS = 10;

  /** The level above which a window counts [dBFS], sine-referenced. */
  static final double ACTIVE_DBFS = -60;

  /** A full-scale sine has half the power of the full scale (AES17). */
  private static final double SINE_POWER = 0.5;

  private static final double STEP_DB = 0.05;
  private static final double LEAST_DB = -24;
  private static final double MOST_DB = 96;
  private static final double USUAL_SHARE = 0.95;

  private final int windowFrames;
  private final double restDb;
  private final long[] counts = new long[(int) Math.round((MOST_DB - LEAST_DB) / STEP_DB) + 1];
  private int filled;
  private double in;
  private double out;
  private double activePower;
  private long active;
  private double peak;
  private double mostDb;

  /**
   * Makes a meter.
   *
   * @param rate the sample rate
   * @param restDb the gain of the stage where it does nothing [dB]
   */
  StageMeter(SampleRate rate, double restDb) {
    windowFrames = (int) Math.max(1, Math.round(rate.hertz() * WINDOW_MILLIS / 1000));
    this.restDb = restDb;
    restart();
  }

  void restart() {
    Arrays.fill(counts, 0);
    filled = 0;
    in = 0;
    out = 0;
    activePower = 0;
    active = 0;
    peak = 0;
    mostDb = Double.NEGATIVE_INFINITY;
  }

  /** Takes the next frames before and after the stage, in time with each other. */
  void process(double[][] before, double[][] after, int afterOffset, int count) {
    for (int i = 0; i < count; i++) {
      for (int c = 0; c < before.length; c++) {
        double x = before[c][i];
        double y = after[c][afterOffset + i];
        peak = Math.max(peak, Math.abs(x));
        in += x * x;
        out += y * y;
      }
      filled++;
      if (filled == windowFrames) {
        close(before.length);
      }
    }
  }

  private void close(int channelCount) {
    double power = in / (windowFrames * (double) channelCount * SINE_POWER);
    if (power > Math.pow(10, ACTIVE_DBFS / 10)) {
      double reductionDb = 10 * Math.log10(in / Math.max(out, Double.MIN_NORMAL)) + restDb;
      double held = Math.max(LEAST_DB, Math.min(MOST_DB, reductionDb));
      counts[(int) Math.round((held - LEAST_DB) / STEP_DB)]++;
      mostDb = Math.max(mostDb, held);
      activePower += power;
      active++;
    }
    filled = 0;
    in = 0;
    out = 0;
  }

  StageReading measure() {
    double peakDbfs = 20 * Math.log10(peak);
    if (active == 0) {
      return new StageReading(Double.NEGATIVE_INFINITY, peakDbfs, 0, 0);
    }
    return new StageReading(10 * Math.log10(activePower / active), peakDbfs, usualDb(), mostDb);
  }

  private double usualDb() {
    long left = (long) Math.ceil(USUAL_SHARE * active);
    int step = -1;
    while (left > 0) {
      step++;
      left -= counts[step];
    }
    return LEAST_DB + step * STEP_DB;
  }
}
