package chainwright.dsp.nonlinear;

import java.util.List;

/** The hyperbolic tangent, y = tanh x: smooth, symmetric, never beyond ±1. */
public record TanhShaper() implements Shaper {

  @Override
  public double shape(double sample) {
    return Math.tanh(sample);
  }

  @Override
  public double slope(double sample) {
    double cosh = Math.cosh(sample);
    return 1 / (cosh * cosh);
  }

  @Override
  public List<Double> corners() {
    return List.of();
  }
}
