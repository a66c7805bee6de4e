package chainwright.dsp.nonlinear;

/**
 * The hyperbolic tangent, within 2 · 10⁻¹⁵ of itself and many times faster than {@link Math#tanh}:
 * there is no branch and no table, so that Java's compiler computes several at once.
 *
 * <p>Source: the continued fraction x / (1 + x² / (3 + x² / (5 + ...))) of J. H. Lambert, cut off
 * after nine levels, of a quarter of x; and tanh 2y = 2 tanh y / (1 + tanh² y), twice, kept as a
 * numerator and a denominator. For what is so large that the fraction would be wrong, the doubling
 * takes the error away.
 */
final class HyperbolicTangent {

  /** From here on it is 1 but for the last bits. */
  private static final double LARGEST = 19;

  /** What both sums begin with, 3 · 5 · 7 · ... · 17. */
  private static final double FIRST = 34_459_425;

  private HyperbolicTangent() {}

  /** Returns tanh x, never beyond ±1; NaN for NaN, −0 for −0, subnormal numbers roughly. */
  static double of(double x) {
    double y = Math.max(-LARGEST, Math.min(LARGEST, x)) / 4;
    double square = y * y;
    double above =
        y
            * (1
                + square
                    * (4_729_725 / FIRST
                        + square
                            * (135_135 / FIRST + square * (990 / FIRST + square * (1 / FIRST)))));
    double below =
        1
            + square
                * (16_216_200 / FIRST
                    + square
                        * (945_945 / FIRST + square * (13_860 / FIRST + square * (45 / FIRST))));
    double aboveOfTwo = 2 * above * below;
    double belowOfTwo = below * below + above * above;
    return 2 * aboveOfTwo * belowOfTwo / (belowOfTwo * belowOfTwo + aboveOfTwo * aboveOfTwo);
  }
}
