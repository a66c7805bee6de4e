package chainwright.dsp.dynamics;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;

/**
 * A bell or shelf whose gain follows the level of its key; all channels move alike. NaN or an
 * infinity stays in the filter of its channel until it is reset.
 *
 * @param shape the filter that moves
 * @param frequency its centre or cutoff
 * @param quality its quality factor, as in the cookbook
 * @param control what makes the gain
 * @param rate the sample rate
 * @param key what its detector listens to
 */
public record MovingBandDesign(
    Shape shape,
    Frequency frequency,
    QualityFactor quality,
    GainControl control,
    SampleRate rate,
    KeyInput key)
    implements ProcessorDesign {

  /** Which filter moves. */
  public enum Shape {
    /** A bell. */
    BELL,
    /** A low shelf. */
    LOW_SHELF,
    /** A high shelf. */
    HIGH_SHELF
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    MovingFilter[] filters = new MovingFilter[wiring.channelCount()];
    for (int c = 0; c < filters.length; c++) {
      filters[c] = new MovingFilter(shape, frequency.hertz(), quality.value(), rate.hertz());
    }
    return new Running(new GainCourse(control, rate.hertz(), key, 1, wiring), filters);
  }

  private static final class Running implements Processor {

    private final GainCourse gains;
    private final MovingFilter[] filters;

    Running(GainCourse gains, MovingFilter[] filters) {
      this.gains = gains;
      this.filters = filters;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += KeyInput.CHUNK_FRAMES) {
        int count = Math.min(KeyInput.CHUNK_FRAMES, to - start);
        double[] gainDb = gains.next(channels, start, count)[0];
        for (int c = 0; c < filters.length; c++) {
          double[] channel = channels[c];
          MovingFilter filter = filters[c];
          for (int i = 0; i < count; i++) {
            channel[start + i] = filter.process(channel[start + i], gainDb[i]);
          }
        }
      }
    }

    @Override
    public void reset() {
      gains.reset();
      for (MovingFilter filter : filters) {
        filter.reset();
      }
    }
  }
}
