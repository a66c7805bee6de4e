package chainwright.dsp.signal;

import java.util.Arrays;

/**
 * A {@link RateConversion} at work on the channels of one signal.
 *
 * <p>What comes out is the same, bit for bit, into whatever blocks the signal is cut; nothing is
 * allocated on the way. Silence, and what lies more than the look-ahead after an end, is exact
 * silence. A sample that is not finite spoils the new ones within the look-ahead around it. Not
 * thread-safe.
 */
public final class RateConverter {

  /** Waiting frames are moved to the start of their array once in so many. */
  private static final int ROOM = 4096;

  private final RateConversion conversion;
  private final PhaseRows rows;
  private final int reach;
  private final int taps;
  private final double[][] waiting;
  private final double[] scratch;

  /** Index in the arrays of the frame that the next new one follows. */
  private int base;

  /** How many frames the arrays hold, the silence before the start included. */
  private int held;

  private int phase;
  private long taken;
  private long given;

  RateConverter(RateConversion conversion, PhaseRows rows, int channelCount) {
    if (channelCount < 1) {
      throw new IllegalArgumentException(
          "the number of channels must be at least 1, but was " + channelCount);
    }
    this.conversion = conversion;
    this.rows = rows;
    reach = conversion.lookAheadFrames();
    taps = rows.taps();
    waiting = new double[channelCount][taps + ROOM];
    scratch = new double[taps];
    reset();
  }

  /**
   * Returns how much room a block may need.
   *
   * @param length the block's length [frames]
   * @return the most that can come out of it [frames]
   */
  public int mostOutputFrames(int length) {
    return Math.toIntExact(conversion.outputFrames(length) + 1);
  }

  /**
   * Returns how much room the end may need.
   *
   * @return the most that {@link #finish} can give [frames]
   */
  public int mostFinalFrames() {
    return Math.toIntExact(conversion.outputFrames(reach) + 1);
  }

  /**
   * Converts a block, going on where the last one ended.
   *
   * @param in the samples, [channel][frame]
   * @param from the first frame of the block
   * @param length the number of frames; 0 gives nothing
   * @param out where the new samples go, another array than the old ones'
   * @param at the frame there from which they are written
   * @return how many new frames were written, at most {@link #mostOutputFrames}
   * @throws IllegalArgumentException if there are not as many channels as the converter has
   * @throws IndexOutOfBoundsException if a block does not lie within its array
   */
  public int process(double[][] in, int from, int length, double[][] out, int at) {
    requireChannels(in);
    requireChannels(out);
    int written = 0;
    int done = 0;
    while (done < length) {
      int count = Math.min(length - done, makeRoom());
      for (int c = 0; c < waiting.length; c++) {
        System.arraycopy(in[c], from + done, waiting[c], held, count);
      }
      held += count;
      taken += count;
      done += count;
      written += convert(out, at + written, Long.MAX_VALUE);
    }
    return written;
  }

  /**
   * Ends the signal: gives what still waits, with silence after it. Then only {@link #reset} goes
   * on.
   *
   * @param out where the new samples go
   * @param at the frame there from which they are written
   * @return how many new frames were written, at most {@link #mostFinalFrames}
   * @throws IllegalArgumentException if there are not as many channels as the converter has
   */
  public int finish(double[][] out, int at) {
    requireChannels(out);
    long last = conversion.outputFrames(taken);
    int written = 0;
    int silence = reach;
    while (silence > 0) {
      int count = Math.min(silence, makeRoom());
      for (double[] channel : waiting) {
        Arrays.fill(channel, held, held + count, 0);
      }
      held += count;
      silence -= count;
      written += convert(out, at + written, last);
    }
    return written;
  }

  /** Begins anew, as if new. */
  public void reset() {
    for (double[] channel : waiting) {
      Arrays.fill(channel, 0);
    }
    held = Math.max(0, reach - 1);
    base = held;
    phase = 0;
    taken = 0;
    given = 0;
  }

  private int convert(double[][] out, int at, long last) {
    int written = 0;
    while (base + reach < held && given < last) {
      double[] row = rows.row(phase, scratch);
      int first = base - Math.max(0, reach - 1);
      for (int c = 0; c < waiting.length; c++) {
        out[c][at + written] = product(row, waiting[c], first);
      }
      written++;
      given++;
      phase += conversion.down();
      base += phase / conversion.up();
      phase %= conversion.up();
    }
    return written;
  }

  /** Four sums run side by side, so that none waits for the last addition. */
  private static double product(double[] row, double[] samples, int first) {
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int tap = 0;
    for (; tap + 3 < row.length; tap += 4) {
      s0 += row[tap] * samples[first + tap];
      s1 += row[tap + 1] * samples[first + tap + 1];
      s2 += row[tap + 2] * samples[first + tap + 2];
      s3 += row[tap + 3] * samples[first + tap + 3];
    }
    for (; tap < row.length; tap++) {
      s0 += row[tap] * samples[first + tap];
    }
    return (s0 + s1) + (s2 + s3);
  }

  /** Drops frames that no new one needs any more; returns how many there is room for. */
  private int makeRoom() {
    if (held == waiting[0].length) {
      int dropped = Math.min(held, base - Math.max(0, reach - 1));
      for (double[] channel : waiting) {
        System.arraycopy(channel, dropped, channel, 0, held - dropped);
      }
      held -= dropped;
      base -= dropped;
    }
    return waiting[0].length - held;
  }

  private void requireChannels(double[][] channels) {
    if (channels.length != waiting.length) {
      throw new IllegalArgumentException(
          "the number of channels must be " + waiting.length + ", but was " + channels.length);
    }
  }
}
