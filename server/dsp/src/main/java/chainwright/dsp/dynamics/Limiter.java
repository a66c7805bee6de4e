package chainwright.dsp.dynamics;

import java.util.Arrays;

/**
 * A running limiter of channels that share one gain, made by {@link LimiterDesign#newProcessor}.
 *
 * <p>The output is late by {@link #latencySamples}. It does not depend on the size of blocks. A NaN
 * sample comes out as NaN, counts as silence and leaves nothing behind. What stays below the
 * ceiling and its knee comes out unchanged, bit for bit, once the gain has recovered.
 */
public final class Limiter {

  private static final double NONE_DB = 1e-15;

  private final LimiterCurve curve;
  private final double ceiling;
  private final double release;
  private final int window;

  /** Waiting samples, one ring a channel. */
  private final double[][] waiting;

  /** Released reductions of the window, a ring. */
  private final double[] releasedDb;

  private final SlidingMaximum largestDb;
  private int position;
  private double lastReleasedDb;
  private double sumDb;

  /** The sum since the ring began anew, which replaces the running one before rounding adds up. */
  private double freshSumDb;

  Limiter(LimiterDesign design, double sampleRateHz, int channelCount) {
    if (channelCount < 1) {
      throw new IllegalArgumentException(
          "the number of channels must be at least 1, but was " + channelCount);
    }
    curve = design.curve();
    ceiling = Gains.toFactor(curve.ceilingDb());
    release = GainSmoother.coefficient(design.releaseSeconds(), sampleRateHz);
    window = 1 + (int) Math.round(design.lookAheadSeconds() * sampleRateHz);
    waiting = new double[channelCount][window];
    releasedDb = new double[window];
    largestDb = new SlidingMaximum(window);
  }

  /**
   * Returns how late the output is: the look-ahead.
   *
   * @return the latency [samples], ≥ 0
   */
  public int latencySamples() {
    return window - 1;
  }

  /** Returns to the initial state, as when the limiter was new. */
  public void reset() {
    for (double[] ring : waiting) {
      Arrays.fill(ring, 0);
    }
    Arrays.fill(releasedDb, 0);
    largestDb.reset();
    position = 0;
    lastReleasedDb = 0;
    sumDb = 0;
    freshSumDb = 0;
  }

  /**
   * Limits the sample peaks of a block in place.
   *
   * @param channels the samples, [channel][sample], full scale 1.0
   * @param offset the first sample of the block
   * @param length the number of samples; 0 changes nothing
   * @throws IllegalArgumentException if there are not as many channels as the limiter has, or the
   *     block does not lie within each
   */
  public void process(double[][] channels, int offset, int length) {
    requireBlock(channels, offset, length);
    for (int i = offset; i < offset + length; i++) {
      double peak = 0;
      for (double[] channel : channels) {
        double magnitude = Math.abs(channel[i]);
        peak = magnitude > peak ? magnitude : peak;
      }
      processFrame(channels, i, peak);
    }
  }

  /**
   * Limits a block in place by peaks that were measured elsewhere, such as true peaks.
   *
   * @param channels the samples, [channel][sample], full scale 1.0
   * @param peaks the highest magnitude about each sample over all channels, at the same indices; a
   *     sample above its own peak is held at the ceiling all the same
   * @param offset the first sample of the block
   * @param length the number of samples; 0 changes nothing
   * @throws IllegalArgumentException if there are not as many channels as the limiter has, or the
   *     block does not lie within each and within the peaks
   */
  public void process(double[][] channels, double[] peaks, int offset, int length) {
    requireBlock(channels, offset, length);
    Arguments.requireRange(offset, length, peaks.length);
    for (int i = offset; i < offset + length; i++) {
      processFrame(channels, i, peaks[i]);
    }
  }

  private void requireBlock(double[][] channels, int offset, int length) {
    if (channels.length != waiting.length) {
      throw new IllegalArgumentException(
          "the number of channels must be " + waiting.length + ", but was " + channels.length);
    }
    for (double[] channel : channels) {
      Arguments.requireRange(offset, length, channel.length);
    }
  }

  private void processFrame(double[][] channels, int index, double peak) {
    double factor = Gains.toFactor(-reductionDb(peak));
    int oldest = position + 1 == window ? 0 : position + 1;
    for (int c = 0; c < waiting.length; c++) {
      waiting[c][position] = channels[c][index];
      double limited = waiting[c][oldest] * factor;
      // The gain suffices by design; this takes away the last bit of rounding, and keeps NaN.
      channels[c][index] = Math.max(-ceiling, Math.min(ceiling, limited));
    }
    position = oldest;
  }

  /** Returns the reduction for the sample that leaves while this peak enters. */
  private double reductionDb(double peak) {
    double heldDb = largestDb.next(wantedDb(peak));
    double decayedDb = release * lastReleasedDb + (1 - release) * heldDb;
    lastReleasedDb = Math.max(heldDb, decayedDb < NONE_DB ? 0 : decayedDb);
    sumDb += lastReleasedDb - releasedDb[position];
    freshSumDb += lastReleasedDb;
    releasedDb[position] = lastReleasedDb;
    if (position == window - 1) {
      sumDb = freshSumDb;
      freshSumDb = 0;
    }
    // Rounding must not turn an ended reduction into a boost.
    return Math.max(0, sumDb / window);
  }

  private double wantedDb(double peak) {
    if (!(peak > 0)) {
      return 0;
    }
    return curve.gainReductionDb(20 * Math.log10(Math.min(peak, Double.MAX_VALUE)));
  }
}
