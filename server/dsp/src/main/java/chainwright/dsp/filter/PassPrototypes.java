package chainwright.dsp.filter;

import chainwright.quantity.Frequency;
import chainwright.quantity.Slope;
import java.util.ArrayList;
import java.util.List;

/** The analogue prototypes of low-pass and high-pass filters of 6 to 48 dB/oct. */
public final class PassPrototypes {

  /** The highest order: 8 poles, 48 dB/oct. */
  public static final int HIGHEST_ORDER = 8;

  private static final double DECIBELS_PER_OCTAVE_OF_A_POLE = 6;

  /** By order; no factor is ever written to. */
  private static final List<List<double[]>> BUTTERWORTH = butterworths();

  private PassPrototypes() {}

  /**
   * Returns the order that has a slope: one for each 6 dB/oct.
   *
   * @param slope the slope, a multiple of 6 dB/oct from 6 to 48
   * @return the order, from 1 to 8
   * @throws IllegalArgumentException if no order has that slope
   */
  public static int order(Slope slope) {
    double order = slope.decibelsPerOctave() / DECIBELS_PER_OCTAVE_OF_A_POLE;
    if (!(order >= 1 && order <= HIGHEST_ORDER && order == Math.rint(order))) {
      throw new IllegalArgumentException(
          "the slope must be a multiple of 6 dB/oct from 6 to 48, but was " + slope);
    }
    return (int) order;
  }

  /**
   * Makes a low-pass.
   *
   * @param family the family
   * @param order the number of poles, from 1 to 8; even for Linkwitz-Riley
   * @param cutoff the cutoff as the family defines it, above 0 Hz
   * @return the prototype
   * @throws IllegalArgumentException if the family has no such order
   */
  public static AnaloguePrototype lowPass(PassFamily family, int order, Frequency cutoff) {
    List<AnalogueSection> sections = new ArrayList<>();
    for (double[] p : denominators(family, order)) {
      sections.add(new AnalogueSection(cutoff, p[0], 0, 0, p[0], p[1], p[2]));
    }
    return new AnaloguePrototype(sections);
  }

  /**
   * Makes a high-pass, the low-pass with {@code 1/s} for {@code s}.
   *
   * @param family the family
   * @param order the number of poles, from 1 to 8; even for Linkwitz-Riley
   * @param cutoff the cutoff as the family defines it, above 0 Hz
   * @return the prototype
   * @throws IllegalArgumentException if the family has no such order
   */
  public static AnaloguePrototype highPass(PassFamily family, int order, Frequency cutoff) {
    List<AnalogueSection> sections = new ArrayList<>();
    for (double[] p : denominators(family, order)) {
      boolean first = p[2] == 0;
      sections.add(
          first
              ? new AnalogueSection(cutoff, 0, p[0], 0, p[1], p[0], 0)
              : new AnalogueSection(cutoff, 0, 0, p[0], p[2], p[1], p[0]));
    }
    return new AnaloguePrototype(sections);
  }

  /**
   * Makes the all-pass that has a Butterworth filter's poles: {@code B(-s) / B(s)}.
   *
   * @param order the number of poles, from 1 to 8
   * @param frequency the cutoff of the Butterworth filter, above 0 Hz
   * @return the prototype, 0 dB everywhere
   * @throws IllegalArgumentException if the order is out of range
   */
  public static AnaloguePrototype allPass(int order, Frequency frequency) {
    List<AnalogueSection> sections = new ArrayList<>();
    for (double[] p : denominators(PassFamily.BUTTERWORTH, order)) {
      sections.add(new AnalogueSection(frequency, p[0], -p[1], p[2], p[0], p[1], p[2]));
    }
    return new AnaloguePrototype(sections);
  }

  /** Returns {@code d0 + d1 s + d2 s^2} of each section of the low-pass, gentle ones first. */
  private static List<double[]> denominators(PassFamily family, int order) {
    if (order < 1 || order > HIGHEST_ORDER) {
      throw new IllegalArgumentException("the order must lie between 1 and 8, but was " + order);
    }
    return switch (family) {
      case BUTTERWORTH -> BUTTERWORTH.get(order);
      case LINKWITZ_RILEY -> linkwitzRiley(order);
      case BESSEL_MAGNITUDE -> BesselPolynomial.ofOrder(order).factorsOfMagnitude();
      case BESSEL_PHASE -> BesselPolynomial.ofOrder(order).factorsOfPhase();
    };
  }

  private static List<List<double[]>> butterworths() {
    List<List<double[]>> all = new ArrayList<>();
    for (int order = 0; order <= HIGHEST_ORDER; order++) {
      all.add(butterworth(order));
    }
    return all;
  }

  /**
   * Poles on the unit circle, at angles that are odd multiples of {@code pi / 2n} from the axis.
   */
  private static List<double[]> butterworth(int order) {
    List<double[]> factors = new ArrayList<>();
    if (order % 2 == 1) {
      factors.add(new double[] {1, 1, 0});
    }
    for (int k = order / 2 - 1; k >= 0; k--) {
      factors.add(new double[] {1, 2 * Math.sin((2 * k + 1) * Math.PI / (2 * order)), 1});
    }
    return factors;
  }

  private static List<double[]> linkwitzRiley(int order) {
    if (order % 2 == 1) {
      throw new IllegalArgumentException(
          "the order of a Linkwitz-Riley filter must be even, but was " + order);
    }
    List<double[]> factors = new ArrayList<>(BUTTERWORTH.get(order / 2));
    factors.addAll(BUTTERWORTH.get(order / 2));
    return factors;
  }
}
