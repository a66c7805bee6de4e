package chainwright.dsp.dynamics;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;

/**
 * What keeps each peak for a while, on the way to a detector: every sample becomes the largest
 * magnitude of itself and those before it. NaN counts as silence.
 *
 * @param frames how long a peak is kept after its own frame [frames], ≥ 0
 */
public record PeakHoldDesign(int frames) implements ProcessorDesign {

  /**
   * Checks the number.
   *
   * @param frames how long a peak is kept [frames]
   * @throws IllegalArgumentException if it is negative
   */
  public PeakHoldDesign {
    if (frames < 0) {
      throw new IllegalArgumentException(
          "a peak must be kept for 0 frames or more, but was for " + frames);
    }
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    SlidingMaximum[] held = new SlidingMaximum[wiring.channelCount()];
    for (int c = 0; c < held.length; c++) {
      held[c] = new SlidingMaximum(frames + 1);
    }
    return new Running(held);
  }

  private static final class Running implements Processor {

    private final SlidingMaximum[] held;

    Running(SlidingMaximum[] held) {
      this.held = held;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int c = 0; c < held.length; c++) {
        for (int i = from; i < to; i++) {
          double magnitude = Math.abs(channels[c][i]);
          channels[c][i] = held[c].next(magnitude >= 0 ? magnitude : 0);
        }
      }
    }

    @Override
    public void reset() {
      for (SlidingMaximum one : held) {
        one.reset();
      }
    }
  }
}
