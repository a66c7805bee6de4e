package chainwright.dsp.nonlinear;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;

/**
 * What shapes every channel by one {@link Shaper}, sample by sample; what lies above half the rate
 * folds back.
 *
 * @param shaper the non-linearity
 */
public record ShapingDesign(Shaper shaper) implements ProcessorDesign, Processor {

  @Override
  public Processor newProcessor(Wiring wiring) {
    return this;
  }

  @Override
  public void process(double[][] channels, int from, int to) {
    for (double[] channel : channels) {
      shaper.process(channel, from, to - from);
    }
  }

  @Override
  public void reset() {
    // A shaper has no memory.
  }
}
