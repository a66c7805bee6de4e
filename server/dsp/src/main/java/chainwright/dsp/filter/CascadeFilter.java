package chainwright.dsp.filter;

import chainwright.dsp.signal.Processor;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A {@link FilterCascade} at work on the channels of one signal: its sections one after the other,
 * then its gain.
 *
 * <p>Silence in gives, after the sections have come to rest, exact silence out. NaN or an infinity
 * in a channel stays in its state until {@link #reset}. Pure delays are not run here but by
 * whatever holds the signal's past samples. Not thread-safe.
 */
public final class CascadeFilter implements Processor {

  /*
   * A section at rest in digital silence decays into subnormal numbers, which are slow; state below
   * any audible meaning is therefore set to 0. This happens at fixed places in the stream, not at
   * the ends of blocks, so that the output does not depend on their size.
   */

  private static final int FRAMES_BETWEEN_CHECKS = 256;

  private final SectionGroup[] groups;

  /** The gain where there is no section that could take it. */
  private final double gainOfNone;

  private final int channelCount;
  private int framesToCheck = FRAMES_BETWEEN_CHECKS;

  /**
   * Makes a filter at rest.
   *
   * @param design the design, without a delay
   * @param channelCount the number of channels, ≥ 1
   * @throws IllegalArgumentException if the design has a delay, or there is no channel
   */
  public CascadeFilter(FilterCascade design, int channelCount) {
    this(withoutDelay(design).sections(), design.gain(), channelCount);
  }

  /**
   * Makes a filter at rest.
   *
   * @param sections the sections in order; none is a wire
   * @param gain the factor of the whole, no unit
   * @param channelCount the number of channels, ≥ 1
   * @throws IllegalArgumentException if there is no channel
   */
  public CascadeFilter(List<BiquadCoefficients> sections, double gain, int channelCount) {
    if (channelCount < 1) {
      throw new IllegalArgumentException(
          "the number of channels must be at least 1, but was " + channelCount);
    }
    List<BiquadCoefficients> scaled = withGain(sections, gain);
    groups = new SectionGroup[(scaled.size() + 1) / 2];
    for (int g = 0; g < groups.length; g++) {
      groups[g] =
          2 * g + 1 < scaled.size()
              ? new SectionPair(scaled.get(2 * g), scaled.get(2 * g + 1), channelCount)
              : new LoneSection(scaled.get(2 * g), channelCount);
    }
    gainOfNone = scaled.isEmpty() ? gain : 1;
    this.channelCount = channelCount;
  }

  /** The last section takes the gain, which costs nothing there. */
  private static List<BiquadCoefficients> withGain(List<BiquadCoefficients> sections, double gain) {
    if (gain == 1 || sections.isEmpty()) {
      return sections;
    }
    List<BiquadCoefficients> scaled = new ArrayList<>(sections);
    scaled.set(scaled.size() - 1, sections.get(sections.size() - 1).times(gain));
    return scaled;
  }

  private static FilterCascade withoutDelay(FilterCascade design) {
    if (design.delaySamples() != 0) {
      throw new IllegalArgumentException(
          "a cascade of sections must have no delay, but had "
              + design.delaySamples()
              + " samples");
    }
    return design;
  }

  @Override
  public void process(double[][] channels, int from, int to) {
    for (int c = 0; c < channelCount; c++) {
      Objects.checkFromToIndex(from, to, channels[c].length);
    }
    int start = from;
    while (start < to) {
      int end = Math.min(to, start + framesToCheck);
      for (SectionGroup group : groups) {
        group.process(channels, start, end);
      }
      framesToCheck -= end - start;
      if (framesToCheck == 0) {
        framesToCheck = FRAMES_BETWEEN_CHECKS;
        for (SectionGroup group : groups) {
          group.settle();
        }
      }
      start = end;
    }
    if (gainOfNone != 1) {
      for (int c = 0; c < channelCount; c++) {
        double[] samples = channels[c];
        for (int i = from; i < to; i++) {
          samples[i] *= gainOfNone;
        }
      }
    }
  }

  @Override
  public void reset() {
    for (SectionGroup group : groups) {
      group.reset();
    }
    framesToCheck = FRAMES_BETWEEN_CHECKS;
  }
}
