package chainwright.dsp.dynamics;

import chainwright.dsp.signal.DelayLine;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.SampleRate;

/**
 * A processor that turns the whole of a signal up and down by the level of its key.
 *
 * @param control what makes the gain
 * @param rate the sample rate
 * @param key what its detector listens to
 * @param linkShare how far the channels share one gain, from 0 (each its own) to 1 (that of the
 *     loudest); between, the gains [dB] are mixed
 * @param lookAheadFrames how far the detector is ahead of the signal [frames], ≥ 0
 */
public record LevelControlDesign(
    GainControl control, SampleRate rate, KeyInput key, double linkShare, int lookAheadFrames)
    implements ProcessorDesign {

  /**
   * Checks the numbers.
   *
   * @param control what makes the gain
   * @param rate the sample rate
   * @param key what its detector listens to
   * @param linkShare how far the channels share one gain
   * @param lookAheadFrames how far the detector is ahead [frames]
   * @throws IllegalArgumentException if a number is outside its range
   */
  public LevelControlDesign {
    if (!(linkShare >= 0 && linkShare <= 1) || lookAheadFrames < 0) {
      throw new IllegalArgumentException(
          "the link must lie between 0 and 1 and the look-ahead not be negative, but were "
              + linkShare
              + " and "
              + lookAheadFrames
              + " frames");
    }
  }

  /**
   * Makes a processor without look-ahead whose channels share one gain.
   *
   * @param control what makes the gain
   * @param rate the sample rate
   * @param key what its detector listens to
   * @return the design
   */
  public static LevelControlDesign of(GainControl control, SampleRate rate, KeyInput key) {
    return new LevelControlDesign(control, rate, key, 1, 0);
  }

  @Override
  public int latencyFrames() {
    return lookAheadFrames;
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new Running(
        new GainCourse(control, rate.hertz(), key, linkShare, wiring),
        new DelayLine(wiring.channelCount(), lookAheadFrames));
  }

  private static final class Running implements Processor {

    private final GainCourse gains;
    private final DelayLine waiting;
    private final double[] factors = new double[KeyInput.CHUNK_FRAMES];

    Running(GainCourse gains, DelayLine waiting) {
      this.gains = gains;
      this.waiting = waiting;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += KeyInput.CHUNK_FRAMES) {
        int count = Math.min(KeyInput.CHUNK_FRAMES, to - start);
        double[][] gainDb = gains.next(channels, start, count);
        waiting.process(channels, start, start + count);
        for (int c = 0; c < channels.length; c++) {
          if (c < gainDb.length) {
            Gains.toFactors(gainDb[c], factors, count);
          }
          double[] channel = channels[c];
          for (int i = 0; i < count; i++) {
            channel[start + i] *= factors[i];
          }
        }
      }
    }

    @Override
    public void reset() {
      gains.reset();
      waiting.reset();
    }
  }
}
