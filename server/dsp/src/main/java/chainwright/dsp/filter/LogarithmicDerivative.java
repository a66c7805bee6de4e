package chainwright.dsp.filter;

/** The derivative of the logarithm of a complex number along a path: {@code P' / P}. */
final class LogarithmicDerivative {

  /**
   * How far from a null the derivative is taken, relative to the frequency or in radians: small
   * beside any bandwidth, large beside rounding.
   */
  static final double NUDGE = 1e-9;

  private LogarithmicDerivative() {}

  static double real(double re, double im, double reSlope, double imSlope) {
    return (re * reSlope + im * imSlope) / (re * re + im * im);
  }

  static double imaginary(double re, double im, double reSlope, double imSlope) {
    return (re * imSlope - im * reSlope) / (re * re + im * im);
  }
}
