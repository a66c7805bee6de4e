package chainwright.dsp.filter;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;

/**
 * What filters every channel by one {@link FilterCascade}.
 *
 * @param cascade the filter, without a delay
 */
public record FilterDesign(FilterCascade cascade) implements ProcessorDesign {

  /** What is left after a fall of 90 dB. */
  private static final double LEFT = Math.pow(10, -90 / 20.0);

  /**
   * Checks the filter.
   *
   * @param cascade the filter
   * @throws IllegalArgumentException if it has a delay
   */
  public FilterDesign {
    if (cascade.delaySamples() != 0) {
      throw new IllegalArgumentException(
          "a filter that runs must have no delay, but had " + cascade.delaySamples() + " samples");
    }
  }

  /**
   * Returns the time in which the slowest pole falls by 90 dB, which is when the filter as a whole
   * has but for a factor that poles close together give.
   *
   * @return the tail [frames]
   */
  @Override
  public int tailFrames() {
    double slowest = 0;
    for (BiquadCoefficients section : cascade.sections()) {
      slowest = Math.max(slowest, section.poleRadius());
    }
    return slowest == 0 ? 2 : (int) Math.min(1e9, Math.ceil(Math.log(LEFT) / Math.log(slowest)));
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    CascadeFilter[] filters = new CascadeFilter[wiring.channelCount()];
    for (int c = 0; c < filters.length; c++) {
      filters[c] = new CascadeFilter(cascade);
    }
    return new Running(filters);
  }

  private static final class Running implements Processor {

    private final CascadeFilter[] filters;

    Running(CascadeFilter[] filters) {
      this.filters = filters;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int c = 0; c < filters.length; c++) {
        filters[c].process(channels[c], from, to);
      }
    }

    @Override
    public void reset() {
      for (CascadeFilter filter : filters) {
        filter.reset();
      }
    }
  }
}
