package chainwright.dsp.filter;

import java.util.ArrayList;
import java.util.List;

/**
 * The reverse Bessel polynomial of one order, whose roots are the poles of the Bessel-Thomson
 * low-pass.
 *
 * <p>Source: W. E. Thomson, 1949: {@code H(s) = p(0) / p(s)}, {@code p(s) = sum over k of (2n-k)! /
 * (2^(n-k) k! (n-k)!) s^k}. The roots are found by simultaneous Newton steps with repulsion (O.
 * Aberth, "Iteration methods for finding all zeros of a polynomial simultaneously", Mathematics of
 * Computation 27, 1973).
 */
final class BesselPolynomial {

  private static final BesselPolynomial[] BY_ORDER = new BesselPolynomial[9];

  static {
    for (int order = 1; order < BY_ORDER.length; order++) {
      BY_ORDER[order] = new BesselPolynomial(order);
    }
  }

  /** Enough for roots to settle at rounding: the steps shrink cubically. */
  private static final int STEPS = 60;

  private final int order;
  private final double[] coefficients;
  private final double[] re;
  private final double[] im;

  private BesselPolynomial(int order) {
    this.order = order;
    coefficients = coefficients(order);
    re = new double[order];
    im = new double[order];
    findRoots();
  }

  static BesselPolynomial ofOrder(int order) {
    return BY_ORDER[order];
  }

  /** Factors with the frequency scaled to -3.01 dB at 1. */
  List<double[]> factorsOfMagnitude() {
    double low = 0;
    double high = order;
    for (int i = 0; i < 100; i++) {
      double middle = (low + high) / 2;
      if (gainSquaredAt(middle) > 0.5) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return factors((low + high) / 2);
  }

  /** Factors with the frequency scaled to poles whose product is 1. */
  List<double[]> factorsOfPhase() {
    return factors(Math.pow(coefficients[0], 1.0 / order));
  }

  private static double[] coefficients(int order) {
    double[] c = new double[order + 1];
    c[order] = 1;
    for (int k = order - 1; k >= 0; k--) {
      // Ratio of the closed form's neighbours: c[k] / c[k+1] = (2n-k) (k+1) / (2 (n-k)).
      c[k] = c[k + 1] * (2 * order - k) * (k + 1) / (2.0 * (order - k));
    }
    return c;
  }

  private double gainSquaredAt(double frequency) {
    double[] p = polynomialAt(0, frequency);
    return coefficients[0] * coefficients[0] / (p[0] * p[0] + p[1] * p[1]);
  }

  /** Divides every root by the scale; one factor for the real root, one for each pair. */
  private List<double[]> factors(double scale) {
    List<double[]> gentleFirst = new ArrayList<>();
    for (int i = 0; i < order; i++) {
      double x = re[i] / scale;
      double y = im[i] / scale;
      if (Math.abs(y) < 1e-9) {
        gentleFirst.add(new double[] {-x, 1, 0});
      } else if (y > 0) {
        gentleFirst.add(new double[] {x * x + y * y, -2 * x, 1});
      }
    }
    gentleFirst.sort((a, b) -> Double.compare(sharpness(a), sharpness(b)));
    return List.copyOf(gentleFirst);
  }

  private static double sharpness(double[] factor) {
    return Math.sqrt(factor[0] * factor[2]) / factor[1];
  }

  private void findRoots() {
    double radius = Math.pow(coefficients[0], 1.0 / order);
    for (int i = 0; i < order; i++) {
      // An odd angle, so that no start lies on an axis of symmetry.
      double angle = 2 * Math.PI * i / order + 0.4;
      re[i] = radius * Math.cos(angle);
      im[i] = radius * Math.sin(angle);
    }
    for (int step = 0; step < STEPS; step++) {
      for (int i = 0; i < order; i++) {
        improveRoot(i);
      }
    }
  }

  private void improveRoot(int i) {
    double[] p = polynomialAt(re[i], im[i]);
    double size = p[2] * p[2] + p[3] * p[3];
    double newtonRe = (p[0] * p[2] + p[1] * p[3]) / size;
    double newtonIm = (p[1] * p[2] - p[0] * p[3]) / size;
    double sumRe = 0;
    double sumIm = 0;
    for (int k = 0; k < order; k++) {
      if (k != i) {
        double x = re[i] - re[k];
        double y = im[i] - im[k];
        sumRe += x / (x * x + y * y);
        sumIm -= y / (x * x + y * y);
      }
    }
    double divisorRe = 1 - (newtonRe * sumRe - newtonIm * sumIm);
    double divisorIm = -(newtonRe * sumIm + newtonIm * sumRe);
    double divisor = divisorRe * divisorRe + divisorIm * divisorIm;
    re[i] -= (newtonRe * divisorRe + newtonIm * divisorIm) / divisor;
    im[i] -= (newtonIm * divisorRe - newtonRe * divisorIm) / divisor;
  }

  /** Horner's rule: real and imaginary part of the value, then of the derivative. */
  private double[] polynomialAt(double x, double y) {
    double valueRe = 0;
    double valueIm = 0;
    double slopeRe = 0;
    double slopeIm = 0;
    for (int k = order; k >= 0; k--) {
      double oldSlope = slopeRe;
      slopeRe = slopeRe * x - slopeIm * y + valueRe;
      slopeIm = oldSlope * y + slopeIm * x + valueIm;
      double oldValue = valueRe;
      valueRe = valueRe * x - valueIm * y + coefficients[k];
      valueIm = oldValue * y + valueIm * x;
    }
    return new double[] {valueRe, valueIm, slopeRe, slopeIm};
  }
}
