package chainwright.dsp.nonlinear;

import chainwright.dsp.signal.OversamplingDesign;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.dsp.signal.SumDesign;
import chainwright.dsp.signal.Wiring;
import java.util.List;

/**
 * What passes a sound exactly as it is until it is overdriven: only what a shaper takes away is
 * made at a multiple of the rate, and added.
 *
 * <p>So what never reaches the shaper's bend is changed by no filter, but is as late.
 *
 * @param shaper the non-linearity; it passes what is soft exactly as it is
 * @param factor the multiple of the rate at which the difference is made: 1, 2, 4, 8, 16 or 32
 */
public record OverloadDesign(Shaper shaper, int factor) implements ProcessorDesign {

  private ProcessorDesign whole() {
    return new SumDesign(
        List.of(new SeriesDesign(List.of()), new OversamplingDesign(new Taken(shaper), factor)));
  }

  @Override
  public int latencyFrames() {
    return whole().latencyFrames();
  }

  @Override
  public int tailFrames() {
    return whole().tailFrames();
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return whole().newProcessor(wiring);
  }

  /** The difference that the shaper makes. */
  private record Taken(Shaper shaper) implements ProcessorDesign, Processor {

    @Override
    public Processor newProcessor(Wiring wiring) {
      return this;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (double[] channel : channels) {
        for (int i = from; i < to; i++) {
          channel[i] = shaper.shape(channel[i]) - channel[i];
        }
      }
    }

    @Override
    public void reset() {
      // A shaper has no memory.
    }
  }
}
