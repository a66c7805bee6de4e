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
    if (!corner.isBelow(rate.nyquist())) {
      throw new IllegalArgumentException(
          "the frequency must lie between 0 Hz and " + rate.nyquist() + ", but was " + corner);
    }
    return Math.tan(Math.PI * corner.hertz() / rate.hertz());
  }

  /** Puts {@code (1 - z^-1) / (1 + z^-1)} for s into {@code (n0 + n1 s) / (d0 + d1 s)}. */
  static BiquadCoefficients ofFirstOrder(double n0, double n1, double d0, double d1) {
    double scale = d0 + d1;
    return new BiquadCoefficients((n0 + n1) / scale, (n0 - n1) / scale, 0, (d0 - d1) / scale, 0);
  }

  /** The same for {@code (n0 + n1 s + n2 s^2) / (d0 + d1 s + d2 s^2)}. */
  static BiquadCoefficients ofSecondOrder(
      double n0, double n1, double n2, double d0, double d1, double d2) {
    double scale = d0 + d1 + d2;
    return new BiquadCoefficients(
        (n0 + n1 + n2) / scale,
        2 * (n0 - n2) / scale,
        (n0 - n1 + n2) / scale,
        2 * (d0 - d2) / scale,
        (d0 - d1 + d2) / scale);
  }
}
