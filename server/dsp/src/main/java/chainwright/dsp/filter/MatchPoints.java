package chainwright.dsp.filter;

import chainwright.quantity.SampleRate;
import java.util.Arrays;

/**
 * The frequencies at which a digital section is held to its prototype: evenly up to 0.465 of the
 * rate, and a few around the centre at multiples of the half bandwidth. A section whose numerator
 * is as free as its denominator gets one more near half the rate, where otherwise a pole could
 * hide.
 */
final class MatchPoints {

  /** A little beyond the 0.45 up to which the match is promised. */
  private static final double HIGHEST_SHARE = 0.465;

  /** The end of the promised band gets a point of its own. */
  private static final double PROMISED_SHARE = 0.45;

  /** Beyond the promised band, so close to half the rate that no resonance lies above. */
  private static final double TOP_SHARE = 0.495;

  private static final int EVEN_POINTS = 14;

  /** In units of the half bandwidth on a logarithmic axis. */
  private static final double[] AROUND_CENTRE = {-3, -1.2, -0.4, 0.4, 1.2, 3};

  /** The same around poles and zeros by themselves, so that no narrow peak slips through. */
  private static final double[] ON_FLANKS = {-0.5, 0.5};

  /** How near to a null there are no points, as detuning {@code Q (f/fc - fc/f)}. */
  private static final double NULL_DETUNING = 0.25;

  private final double[] hertz;
  private final double pinnedHertz;

  private MatchPoints(double[] hertz, double pinnedHertz) {
    this.hertz = hertz;
    this.pinnedHertz = pinnedHertz;
  }

  /** How many frequencies the fit has. */
  int size() {
    return hertz.length;
  }

  /** One frequency of the fit [Hz]. */
  double hertz(int index) {
    return hertz[index];
  }

  /** The frequency whose gain is met exactly [Hz]; 0 if there is none. */
  double pinnedHertz() {
    return pinnedHertz;
  }

  /** These and one more near half the rate. */
  MatchPoints withTop(SampleRate rate) {
    double[] more = Arrays.copyOf(hertz, hertz.length + 1);
    more[hertz.length] = TOP_SHARE * rate.hertz();
    return new MatchPoints(more, pinnedHertz);
  }

  static MatchPoints of(AnalogueSection s, SampleRate rate) {
    double centre = centre(s);
    double q = quality(s);
    double top = HIGHEST_SHARE * rate.hertz();
    double[] points = new double[EVEN_POINTS + AROUND_CENTRE.length + 2 * ON_FLANKS.length + 1];
    int n = 0;
    for (int i = 0; i < EVEN_POINTS; i++) {
      double first = 0.6 * top / EVEN_POINTS;
      n = add(first + (top - first) * i / (EVEN_POINTS - 1), s, q, points, n);
    }
    n = add(PROMISED_SHARE * rate.hertz(), s, q, points, n);
    n = addAround(centre, q, AROUND_CENTRE, s, rate, points, n);
    if (MagnitudeMatch.isInvertible(s) && !s.isFirstOrder()) {
      double poles = s.corner().hertz() * Math.sqrt(s.d0() / s.d2());
      double zeros = s.corner().hertz() * Math.sqrt(s.n0() / s.n2());
      n = addAround(poles, Math.sqrt(s.d0() * s.d2()) / s.d1(), ON_FLANKS, s, rate, points, n);
      n = addAround(zeros, Math.sqrt(s.n0() * s.n2()) / s.n1(), ON_FLANKS, s, rate, points, n);
    }
    double held = centre < top ? centre : s.corner().hertz();
    return new MatchPoints(Arrays.copyOf(points, n), MagnitudeMatch.isNotch(s) ? 0 : held);
  }

  private static int addAround(
      double hertz,
      double q,
      double[] halfWidths,
      AnalogueSection s,
      SampleRate rate,
      double[] points,
      int start) {
    int n = start;
    double halfWidth = asinh(1 / (2 * q));
    for (double k : halfWidths) {
      double f = hertz * Math.exp(k * halfWidth);
      if (f < HIGHEST_SHARE * rate.hertz()) {
        n = add(f, s, q, points, n);
      }
    }
    return n;
  }

  private static int add(double hertz, AnalogueSection s, double q, double[] points, int n) {
    double f = hertz / s.corner().hertz();
    if (MagnitudeMatch.isNotch(s) && Math.abs(f - 1 / f) * q < NULL_DETUNING) {
      return n;
    }
    points[n] = hertz;
    return n + 1;
  }

  /** The poles' frequency, or midway between poles and zeros where both resonate or shelve. */
  private static double centre(AnalogueSection s) {
    double corner = s.corner().hertz();
    double poles = s.isFirstOrder() ? s.d0() / s.d1() : Math.sqrt(s.d0() / s.d2());
    if (!MagnitudeMatch.isInvertible(s)) {
      return corner * poles;
    }
    double zeros = s.isFirstOrder() ? s.n0() / s.n1() : Math.sqrt(s.n0() / s.n2());
    return corner * Math.sqrt(poles * zeros);
  }

  /** The poles' quality factor, or the mean with the zeros'; a deep dip counts by its width. */
  private static double quality(AnalogueSection s) {
    if (s.isFirstOrder()) {
      return 1;
    }
    double poles = Math.sqrt(s.d0() * s.d2()) / s.d1();
    if (!MagnitudeMatch.isInvertible(s)) {
      return poles;
    }
    double zeros = Math.sqrt(s.n0() * s.n2()) / s.n1();
    return Math.min(Math.sqrt(poles * zeros), 3 * zeros);
  }

  private static double asinh(double x) {
    return Math.log(x + Math.sqrt(x * x + 1));
  }
}
