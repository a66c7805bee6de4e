package chainwright.dsp.filter;

import chainwright.dsp.signal.DelayLine;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import java.util.Arrays;

/**
 * What delays every channel by a {@link SampledDelay}.
 *
 * <p>A delay that is too short for its interpolation, or that looks ahead, has a latency.
 *
 * @param delay the delay that is meant
 */
public record DelayDesign(SampledDelay delay) implements ProcessorDesign {

  private static final int REACH = SampledDelay.TAPS / 2 - 1;

  @Override
  public int latencyFrames() {
    int first = (int) Math.floor(delay.frames());
    return Math.max(0, (delay.isWhole() ? 0 : REACH) - first);
  }

  @Override
  public int tailFrames() {
    return (int) Math.max(0, Math.ceil(delay.frames())) + (delay.isWhole() ? 0 : REACH);
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    int whole = (int) Math.floor(delay.frames()) + latencyFrames();
    if (delay.isWhole()) {
      return new DelayLine(wiring.channelCount(), whole);
    }
    return new Interpolated(
        new DelayLine(wiring.channelCount(), whole - REACH),
        delay.toWeights(),
        wiring.channelCount());
  }

  private static final class Interpolated implements Processor {

    private final DelayLine line;
    private final double[] weights;

    /** The last frames of each channel, each stored twice so that they lie in one piece. */
    private final double[][] past;

    private int position;

    Interpolated(DelayLine line, double[] weights, int channelCount) {
      this.line = line;
      this.weights = weights;
      past = new double[channelCount][2 * weights.length];
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      line.process(channels, from, to);
      int next = position;
      for (int c = 0; c < past.length; c++) {
        next = position;
        for (int i = from; i < to; i++) {
          next = next == 0 ? weights.length - 1 : next - 1;
          past[c][next] = channels[c][i];
          past[c][next + weights.length] = channels[c][i];
          double sum = 0;
          for (int k = 0; k < weights.length; k++) {
            sum += weights[k] * past[c][next + k];
          }
          channels[c][i] = sum;
        }
      }
      position = next;
    }

    @Override
    public void reset() {
      line.reset();
      for (double[] channel : past) {
        Arrays.fill(channel, 0);
      }
      position = 0;
    }
  }
}
