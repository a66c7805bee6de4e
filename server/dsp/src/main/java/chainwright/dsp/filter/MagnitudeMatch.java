package chainwright.dsp.filter;

import chainwright.quantity.SampleRate;
import java.util.List;

/**
 * Designs a digital section whose magnitude follows the analogue prototype up to 0.45 of the sample
 * rate.
 *
 * <p>Method: the bilinear section is only the start. Its polynomials, seen through the bilinear
 * transform as {@code u + t s + v s^2}, have positive coefficients exactly when poles and zeros lie
 * inside the unit circle, so the logarithms of the coefficients are free to move. They are moved to
 * make the sum of the squared differences in decibels least over some twenty frequencies, {@link
 * LogMagnitudeFit}; the gains at 0 Hz (bell, shelf, low-pass, notch) and at the centre stay exact.
 * A cut is designed as its boost with the polynomials exchanged, and is therefore its exact
 * inverse.
 *
 * <p>Largest deviation from the prototype up to 0.45 of the rate, as asserted by the tests on
 * centres from 0.0001 to 0.4 of the rate and gains up to 18 dB either way: bell of Q 0.3 to 10 0.30
 * dB, shelf of Q 0.3 to 2 0.34 dB, tilt 0.39 dB, low-pass of Q 0.3 to 10 0.24 dB, high-pass of Q up
 * to 5 1.13 dB and of Q 10 1.65 dB (its double zero at 0 Hz leaves too little to move), band-pass
 * 0.53 dB, notch of Q 5 or more 0.15 dB beside the null; Butterworth and Bessel filters of 48
 * dB/oct 0.84 dB. Between the grid's points a bell of low Q above 0.3 of the rate was seen 0.57 dB
 * off, one in 300,000 drawn at random. A bell or shelf nowhere rises over its prototype's peak by
 * more than 0.45 dB, up to half the rate: a first fit that does is replaced by one that is held
 * there too. Outside that range the design stays stable, but the deviation grows: corners above 0.4
 * of the rate, notches of Q below 1, shelves of Q above 2.
 *
 * <p>Source: the aim and the choice of a squared magnitude in {@code sin^2(w/2)} are those of M.
 * Vicanek, "Matched Second Order Digital Filters", 2016, and S. J. Orfanidis, "Digital Parametric
 * Equalizer Design with Prescribed Nyquist-Frequency Gain", JAES 45(6), 1997; the least-squares fit
 * in place of a few prescribed values is ours, by D. W. Marquardt, "An Algorithm for Least-Squares
 * Estimation of Nonlinear Parameters", 1963.
 */
final class MagnitudeMatch {

  /** Below this share of the rate no resonance was ever found above the promised band. */
  private static final double SAFE_SHARE = 0.25;

  /** Squared magnitude; 0.4 dB. */
  private static final double OVERSHOOT = 1.096;

  private MagnitudeMatch() {}

  static List<BiquadCoefficients> design(AnaloguePrototype prototype, SampleRate rate) {
    return prototype.sections().stream().map(section -> design(section, rate)).toList();
  }

  static BiquadCoefficients design(AnalogueSection section, SampleRate rate) {
    double k = BilinearTransform.warp(section.corner(), rate);
    if (section.n0() < 0 || section.n1() < 0 || section.n2() < 0) {
      // An all-pass: there is no magnitude to match.
      return BilinearTransform.design(section, rate);
    }
    boolean cut = isInvertible(section) && section.n1() < section.d1();
    AnalogueSection boost = cut ? inverse(section) : section;
    double[] c = fit(boost, k, rate);
    double[] n = {c[0], c[1], c[2]};
    double[] d = {c[3], c[4], c[5]};
    return cut ? section(d, n, section.isFirstOrder()) : section(n, d, section.isFirstOrder());
  }

  private static double[] fit(AnalogueSection s, double k, SampleRate rate) {
    MatchPoints points = MatchPoints.of(s, rate);
    double[] c = fit(s, k, rate, points);
    boolean isHigh = s.corner().hertz() > SAFE_SHARE * rate.hertz();
    return isHigh && isInvertible(s) && !s.isFirstOrder() && !follows(c, s)
        ? fit(s, k, rate, points.withTop(rate))
        : c;
  }

  private static double[] fit(AnalogueSection s, double k, SampleRate rate, MatchPoints points) {
    double[] c = start(s, k, rate);
    new LogMagnitudeFit(c, isFree(s), points, s, rate).run();
    return c;
  }

  /** Whether the section, and its inverse, nowhere rise over what their prototypes reach. */
  private static boolean follows(double[] c, AnalogueSection s) {
    double wanted =
        QuadraticRatio.highestMagnitudeSquared(s.n0(), s.n1(), s.n2(), s.d0(), s.d1(), s.d2());
    double wantedOfInverse =
        QuadraticRatio.highestMagnitudeSquared(s.d0(), s.d1(), s.d2(), s.n0(), s.n1(), s.n2());
    return QuadraticRatio.highestMagnitudeSquared(c[0], c[1], c[2], c[3], c[4], c[5])
            <= OVERSHOOT * wanted
        && QuadraticRatio.highestMagnitudeSquared(c[3], c[4], c[5], c[0], c[1], c[2])
            <= OVERSHOOT * wantedOfInverse;
  }

  private static BiquadCoefficients section(double[] n, double[] d, boolean firstOrder) {
    return firstOrder
        ? BilinearTransform.ofFirstOrder(n[0], n[1], d[0], d[1])
        : BilinearTransform.ofSecondOrder(n[0], n[1], n[2], d[0], d[1], d[2]);
  }

  /** Whether the numerator is as complete as the denominator, as in bells, shelves and tilts. */
  static boolean isInvertible(AnalogueSection s) {
    return s.n0() > 0 && s.n1() > 0 && (s.n2() > 0 || s.isFirstOrder());
  }

  private static AnalogueSection inverse(AnalogueSection s) {
    return new AnalogueSection(s.corner(), s.d0(), s.d1(), s.d2(), s.n0(), s.n1(), s.n2());
  }

  /** Whether the section has a null at its corner: numerator {@code n0 + n2 s^2} alone. */
  static boolean isNotch(AnalogueSection s) {
    return s.n0() > 0 && s.n1() == 0 && s.n2() > 0;
  }

  /**
   * Bilinear coefficients u, t, v of numerator and denominator. A low-pass or band-pass, whose
   * bilinear form has zeros at half the rate, gets the prototype's gain there instead.
   */
  private static double[] start(AnalogueSection s, double k, SampleRate rate) {
    double nyquistGain = Math.sqrt(s.magnitudeSquaredAt(rate.hertz() / 2));
    if (s.isFirstOrder()) {
      double t = s.n1() == 0 ? s.d1() * nyquistGain : s.n1();
      return new double[] {s.n0() * k, t, 0, s.d0() * k, s.d1(), 0};
    }
    double u = s.n0() * k * k;
    double t = s.n1() * k;
    double v = s.n2();
    if (s.n2() == 0) {
      v = s.d2() * nyquistGain;
      if (s.n1() == 0) {
        t = 2 * Math.sqrt(u * v);
      }
    }
    return new double[] {u, t, v, s.d0() * k * k, s.d1() * k, s.d2()};
  }

  /** Which of t and v of numerator and denominator may move; both u keep the gain at 0 Hz. */
  private static boolean[] isFree(AnalogueSection s) {
    boolean second = !s.isFirstOrder();
    boolean highPass = second && s.n0() == 0 && s.n1() == 0;
    return new boolean[] {
      false, !highPass && !isNotch(s), second && !isNotch(s), false, true, second
    };
  }
}
