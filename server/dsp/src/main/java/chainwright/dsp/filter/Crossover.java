package chainwright.dsp.filter;

import chainwright.quantity.Frequency;
import chainwright.quantity.SampleRate;
import chainwright.quantity.Slope;
import java.util.List;

/**
 * Two halves of a band that add up flat: a low-pass and a high-pass of one frequency.
 *
 * <p>12, 24, 36 and 48 dB/oct are Linkwitz-Riley; at 12 and 36 the high half comes with its
 * polarity turned, without which the halves would cancel at the crossover. 6 dB/oct is Butterworth
 * of first order. All are made by the bilinear transform, which keeps the sum flat at every
 * frequency.
 *
 * <p>Source: S. Linkwitz and R. Riley, "Active Crossover Networks for Noncoincident Drivers", JAES
 * 24(1), 1976.
 *
 * @param low the lower half
 * @param high the upper half, its polarity turned where the sum needs it
 * @param sum the all-pass that both halves add up to; delays a band that is split no further
 */
public record Crossover(FilterCascade low, FilterCascade high, FilterCascade sum) {

  /**
   * Designs a crossover.
   *
   * @param frequency the crossover frequency, where each half is -6.02 dB (-3.01 dB at 6 dB/oct)
   * @param slope 6, 12, 24, 36 or 48 dB/oct
   * @param rate the sample rate
   * @return the two halves and their sum
   * @throws IllegalArgumentException if the frequency is not below half the rate, or no crossover
   *     has that slope
   */
  public static Crossover of(Frequency frequency, Slope slope, SampleRate rate) {
    int order = PassPrototypes.order(slope);
    FilterCascade sum = Curve.BILINEAR.design(sum(frequency, slope), rate);
    if (order == 1) {
      return new Crossover(
          half(PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 1, frequency), rate),
          half(PassPrototypes.highPass(PassFamily.BUTTERWORTH, 1, frequency), rate),
          sum);
    }
    FilterCascade high =
        half(PassPrototypes.highPass(PassFamily.LINKWITZ_RILEY, order, frequency), rate);
    return new Crossover(
        half(PassPrototypes.lowPass(PassFamily.LINKWITZ_RILEY, order, frequency), rate),
        order % 4 == 2 ? high.withInvertedPolarity() : high,
        sum);
  }

  /**
   * Returns what the two halves of a crossover add up to, where nobody asks for the halves.
   *
   * @param frequency the crossover frequency
   * @param slope 6, 12, 24, 36 or 48 dB/oct
   * @param rate the sample rate
   * @return the response of {@link #sum()}, designed when it is first looked at
   * @throws IllegalArgumentException if the frequency is not below half the rate, or no crossover
   *     has that slope
   */
  public static Response sumOf(Frequency frequency, Slope slope, SampleRate rate) {
    return Curve.BILINEAR.designLater(sum(frequency, slope), rate);
  }

  private static AnaloguePrototype sum(Frequency frequency, Slope slope) {
    int order = PassPrototypes.order(slope);
    if (order > 1 && order % 2 == 1) {
      throw new IllegalArgumentException(
          "the order of a Linkwitz-Riley filter must be even, but was " + order);
    }
    return order == 1
        ? new AnaloguePrototype(List.of())
        : PassPrototypes.allPass(order / 2, frequency);
  }

  private static FilterCascade half(AnaloguePrototype prototype, SampleRate rate) {
    return Curve.BILINEAR.design(prototype, rate);
  }
}
