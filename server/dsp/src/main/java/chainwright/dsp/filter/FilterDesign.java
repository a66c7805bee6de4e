package chainwright.dsp.filter;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.dsp.signal.Wiring;
import java.util.ArrayList;
import java.util.List;

/**
 * What filters every channel by one {@link FilterCascade}. NaN or an infinity stays in its channel
 * until the filter is reset.
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
   * Puts processors one after the other, filters that follow one another as one, which runs faster
   * than each for itself.
   *
   * @param parts the designs in order, filters among them at one rate
   * @return all of them as one
   */
  public static ProcessorDesign inSeries(List<ProcessorDesign> parts) {
    List<ProcessorDesign> joined = new ArrayList<>();
    for (ProcessorDesign part : parts) {
      if (part instanceof SeriesDesign series) {
        series.parts().forEach(inner -> append(joined, inner));
      } else {
        append(joined, part);
      }
    }
    return joined.size() == 1 ? joined.get(0) : new SeriesDesign(joined);
  }

  private static void append(List<ProcessorDesign> joined, ProcessorDesign part) {
    int last = joined.size() - 1;
    if (part instanceof FilterDesign filter
        && last >= 0
        && joined.get(last) instanceof FilterDesign before) {
      joined.set(last, new FilterDesign(before.cascade.then(filter.cascade)));
    } else {
      joined.add(part);
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
    return new CascadeFilter(cascade, wiring.channelCount());
  }
}
