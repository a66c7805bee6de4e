package chainwright.dsp.filter;

import java.util.List;
import java.util.Objects;

/**
 * A {@link FilterCascade} at work on one channel: its sections one after the other, then its gain.
 *
 * <p>Pure delays are not run here but by whatever holds the channel's past samples. Not
 * thread-safe.
 */
public final class CascadeFilter {

  private final List<BiquadFilter> sections;
  private final double gain;

  /**
   * Makes a filter at rest.
   *
   * @param design the design, without a delay
   * @throws IllegalArgumentException if the design has a delay
   */
  public CascadeFilter(FilterCascade design) {
    if (design.delaySamples() != 0) {
      throw new IllegalArgumentException(
          "a cascade of sections must have no delay, but had "
              + design.delaySamples()
              + " samples");
    }
    sections = design.sections().stream().map(BiquadFilter::new).toList();
    gain = design.gain();
  }

  /**
   * Filters samples in place, going on where the last block ended.
   *
   * @param samples the channel's samples, overwritten from {@code from} to before {@code to}
   * @param from the index of the first sample
   * @param to the index after the last sample; an empty block changes nothing
   * @throws IndexOutOfBoundsException if the block does not lie within the array
   */
  public void process(double[] samples, int from, int to) {
    Objects.checkFromToIndex(from, to, samples.length);
    for (BiquadFilter section : sections) {
      section.process(samples, from, to);
    }
    if (gain != 1) {
      for (int i = from; i < to; i++) {
        samples[i] *= gain;
      }
    }
  }

  /** Brings the filter to rest, as if new. */
  public void reset() {
    for (BiquadFilter section : sections) {
      section.reset();
    }
  }
}
