package chainwright.dsp.dynamics;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.SampleRate;

/**
 * A limiter of sample peaks at work on all channels.
 *
 * @param limiter the ceiling and times
 * @param rate the sample rate
 * @param linkShare how far the channels share one gain, from 0 (each its own) to 1 (that of the
 *     highest peak); between, the peaks [dB] are mixed, so that no channel passes the ceiling
 */
public record PeakLimitingDesign(LimiterDesign limiter, SampleRate rate, double linkShare)
    implements ProcessorDesign {

  /**
   * Checks the link.
   *
   * @param limiter the ceiling and times
   * @param rate the sample rate
   * @param linkShare how far the channels share one gain
   * @throws IllegalArgumentException if the link does not lie between 0 and 1
   */
  public PeakLimitingDesign {
    if (!(linkShare >= 0 && linkShare <= 1)) {
      throw new IllegalArgumentException("the link must lie between 0 and 1, but was " + linkShare);
    }
  }

  @Override
  public int latencyFrames() {
    return (int) Math.round(limiter.lookAheadSeconds() * rate.hertz());
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    int channelCount = wiring.channelCount();
    if (linkShare == 1 || channelCount == 1) {
      return new Linked(limiter.newProcessor(rate.hertz(), channelCount));
    }
    Limiter[] limiters = new Limiter[channelCount];
    for (int c = 0; c < channelCount; c++) {
      limiters[c] = limiter.newProcessor(rate.hertz(), 1);
    }
    return new Mixed(limiters, linkShare);
  }

  private static final class Linked implements Processor {

    private final Limiter limiter;

    Linked(Limiter limiter) {
      this.limiter = limiter;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      limiter.process(channels, from, to - from);
    }

    @Override
    public void reset() {
      limiter.reset();
    }
  }

  private static final class Mixed implements Processor {

    private final Limiter[] limiters;
    private final double link;
    private final double[] common = new double[KeyInput.CHUNK_FRAMES];
    private final double[][] own = new double[1][KeyInput.CHUNK_FRAMES];
    private final double[] peaks = new double[KeyInput.CHUNK_FRAMES];

    Mixed(Limiter[] limiters, double link) {
      this.limiters = limiters;
      this.link = link;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += KeyInput.CHUNK_FRAMES) {
        int count = Math.min(KeyInput.CHUNK_FRAMES, to - start);
        for (int i = 0; i < count; i++) {
          double highest = 0;
          for (double[] channel : channels) {
            double magnitude = Math.abs(channel[start + i]);
            highest = magnitude > highest ? magnitude : highest;
          }
          common[i] = highest;
        }
        for (int c = 0; c < limiters.length; c++) {
          System.arraycopy(channels[c], start, own[0], 0, count);
          for (int i = 0; i < count; i++) {
            double magnitude = Math.abs(own[0][i]);
            double mixed = Math.pow(common[i], link) * Math.pow(magnitude, 1 - link);
            // Rounding must not take a peak below its own.
            peaks[i] = link == 0 ? magnitude : Math.max(magnitude, mixed);
          }
          limiters[c].process(own, peaks, 0, count);
          System.arraycopy(own[0], 0, channels[c], start, count);
        }
      }
    }

    @Override
    public void reset() {
      for (Limiter limiter : limiters) {
        limiter.reset();
      }
    }
  }
}
