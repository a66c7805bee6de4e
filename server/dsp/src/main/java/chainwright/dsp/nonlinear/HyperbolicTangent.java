package chainwright.dsp.nonlinear;

/**
 * The hyperbolic tangent, several times faster than {@link Math#tanh} and within three units in the
 * last place.
 *
 * <p>Source: tanh (a + b) = tanh a + (1 − tanh² a) tanh b / (1 + tanh a tanh b), with a from a
 * table and b so small that four terms of the Taylor series give its tangent.
 */
final class HyperbolicTangent {

  private static final int STEPS = 32;

  /** From here on it is 1 but for the last bit. */
  private static final int LARGEST = 20;

  private static final double[] TABLE = new double[LARGEST * STEPS + 1];

  static {
    for (int k = 0; k < TABLE.length; k++) {
      TABLE[k] = StrictMath.tanh((double) k / STEPS);
    }
  }

  private HyperbolicTangent() {}

  /** Returns tanh x; NaN for NaN, −0 for −0. */
  static double of(double x) {
    double magnitude = Math.abs(x);
    if (!(magnitude < LARGEST)) {
      return Double.isNaN(x) ? x : Math.copySign(1, x);
    }
    int k = (int) (magnitude * STEPS + 0.5);
    double b = magnitude - k * (1.0 / STEPS);
    double square = b * b;
    double ofB = b + b * square * (-1 / 3.0 + square * (2 / 15.0 - square * (17 / 315.0)));
    double ofA = TABLE[k];
    return Math.copySign(ofA + (1 - ofA * ofA) * ofB / (1 + ofA * ofB), x);
  }
}
