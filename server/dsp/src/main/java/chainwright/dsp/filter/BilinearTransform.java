package chainwright.dsp.filter;

import chainwright.quantity.Frequency;
import chainwright.quantity.SampleRate;
import java.util.List;

/**
 * The bilinear transform with its frequency prewarped: the digital filter has the prototype's value
 * exactly at the corner, and elsewhere that of a bent frequency axis.
 *
 * <p>At frequency f it has the analogue response at {@code corner * tan(pi f/rate) / tan(pi
 * corner/rate)}, so that what the prototype does at infinity happens at half the rate.
 *
 * <p>Source: R. Bristow-Johnson, "Audio EQ Cookbook", W3C Group Note, section on the bilinear
 * transform; all its filters are this transform of their prototypes.
 */
final class BilinearTransform {

  private BilinearTransform() {}

  static List<BiquadCoefficients> design(AnaloguePrototype prototype, SampleRate rate) {
    return prototype.sections().stream().map(section -> design(section, rate)).toList();
  }

  static BiquadCoefficients design(AnalogueSection section, SampleRate rate) {
    double k = warp(section.corner(), rate);
    if (section.isFirstOrder()) {
      return ofFirstOrder(section.n0() * k, section.n1(), section.d0() * k, section.d1());
    }
    double square = k * k;
    return ofSecondOrder(
        section.n0() * square,
        section.n1() * k,
        section.n2(),
        section.d0() * square,
        section.d1() * k,
        section.d2());
  }

  /** Returns {@code tan(pi f / rate)}, the frequency that the transform maps to f. */
  static double warp(Frequency corner, SampleRate rate) {
    requireBelowNyquist(corner, rate);
    return Math.tan(Math.PI * corner.hertz() / rate.hertz());
  }

  static void requireBelowNyquist(Frequency corner, SampleRate rate) {
    if (!corner.isBelow(rate.nyquist())) {
      throw new IllegalArgumentException(
          "the frequency must lie between 0 Hz and " + rate.nyquist() + ", but was " + corner);
    }
  }

  /** Puts {@code (1 - z^-1) / (1 + z^-1)} for s into {@code (n0 + n1 s) / (d0 + d1 s)}. */
  static BiquadCoefficients ofFirstOrder(double n0, double n1, double d0, double d1) {
    double scale = d0 + d1;
    double b0 = (n0 + n1) / scale;
    return new BiquadCoefficients(b0, 2 * n0 / scale - b0, 0, 2 * d0 / scale - 1, 0);
  }

  /**
   * The same for {@code (n0 + n1 s + n2 s^2) / (d0 + d1 s + d2 s^2)}.
   *
   * <p>The coefficients of the past samples are not rounded each by itself but so that their sums,
   * which are the polynomials at 0 Hz and tiny at low corners, keep their accuracy.
   */
  static BiquadCoefficients ofSecondOrder(
      double n0, double n1, double n2, double d0, double d1, double d2) {
    double scale = d0 + d1 + d2;
    double b0 = (n0 + n1 + n2) / scale;
    double b2 = b0 - 2 * n1 / scale;
    double b1 = 4 * n0 / scale - (b0 + b2);
    double a2 = 1 - 2 * d1 / scale;
    double a1 = 4 * d0 / scale - (1 + a2);
    return new BiquadCoefficients(b0, b1, b2, a1, a2);
  }
}
