package chainwright.dsp.filter;

import chainwright.quantity.SampleRate;

/**
 * For which sections the design of {@link MagnitudeMatch} is known to stay so near its prototype
 * that a question may be answered by the prototype: bells of Q 0.3 to 10 and shelves of Q 0.3 to 2,
 * up to 18 dB, centred at up to 0.3 of the rate, and high-passes of first order and of Q 0.3 to 5
 * with a corner at up to 0.1 of the rate. The tests draw such sections at random.
 */
final class MatchPromise {

  /**
   * How far the magnitude is from the prototype's up to {@link #HIGHEST_SHARE}, and the peak from
   * the prototype's peak anywhere [dB].
   */
  static final double DEVIATION_DB = 0.45;

  /** Up to which share of the rate. */
  static final double HIGHEST_SHARE = 0.45;

  private static final double LEAST_CENTRE_SHARE = 1e-4;
  private static final double MOST_CENTRE_SHARE = 0.3;
  private static final double MOST_HIGH_PASS_SHARE = 0.1;
  private static final double LEAST_Q = 0.3;
  private static final double MOST_HIGH_PASS_Q = 5;
  private static final double MOST_BELL_Q = 10;
  private static final double MOST_SHELF_Q = 2;
  private static final double MOST_GAIN_DB = 18;
  private static final double ROUNDING = 1e-9;

  private MatchPromise() {}

  static boolean holdsFor(AnalogueSection s, SampleRate rate) {
    double share = s.corner().hertz() / rate.hertz();
    if (share < LEAST_CENTRE_SHARE || share > MOST_CENTRE_SHARE) {
      return false;
    }
    double poles = Math.sqrt(s.d0() * s.d2()) / s.d1();
    if (isHighPass(s)) {
      return share <= MOST_HIGH_PASS_SHARE
          && (s.isFirstOrder() || (poles >= LEAST_Q && poles <= MOST_HIGH_PASS_Q));
    }
    return !s.isFirstOrder() && MagnitudeMatch.isInvertible(s) && isBellOrShelf(s, poles);
  }

  private static boolean isHighPass(AnalogueSection s) {
    return s.n0() == 0 && (s.isFirstOrder() ? s.n1() > 0 : s.n1() == 0 && s.n2() > 0);
  }

  private static boolean isBellOrShelf(AnalogueSection s, double poles) {
    double zeros = Math.sqrt(s.n0() * s.n2()) / s.n1();
    double q = Math.sqrt(poles * zeros);
    boolean isBell = isSame(s.d0(), s.d2()) && isSame(s.n0(), s.n2()) && isSame(s.n0(), s.d0());
    boolean isShelf = isSame(poles, zeros) && isSame(s.n0() * s.n2(), s.d0() * s.d2() * power(s));
    double gain = isBell ? poles / zeros : (s.n2() * s.d0()) / (s.d2() * s.n0());
    return (isBell || isShelf)
        && q >= LEAST_Q
        && q <= (isBell ? MOST_BELL_Q : MOST_SHELF_Q)
        && Math.abs(20 * Math.log10(gain)) <= MOST_GAIN_DB;
  }

  /** The squared gain in the middle of a shelf. */
  private static double power(AnalogueSection s) {
    return (s.n1() * s.n1()) / (s.d1() * s.d1());
  }

  private static boolean isSame(double a, double b) {
    return Math.abs(a - b) <= ROUNDING * Math.abs(b);
  }

  /** The highest magnitude of a section over all frequencies [dB]. */
  static double highestDecibels(AnalogueSection s) {
    if (s.isFirstOrder()) {
      // Its magnitude goes from one end to the other and never back.
      return 20 * Math.log10(Math.max(Math.abs(s.n0() / s.d0()), Math.abs(s.n1() / s.d1())));
    }
    double square =
        QuadraticRatio.highestMagnitudeSquared(s.n0(), s.n1(), s.n2(), s.d0(), s.d1(), s.d2());
    return 10 * Math.log10(square);
  }
}
