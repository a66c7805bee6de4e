package chainwright.dsp.nonlinear;

import java.util.List;
import java.util.Objects;

/** The hyperbolic tangent, y = tanh x: smooth, symmetric, never beyond ±1. */
public record TanhShaper() implements Shaper {

  @Override
  public double shape(double sample) {
    return HyperbolicTangent.of(sample);
  }

  @Override
  public double slope(double sample) {
    double cosh = Math.cosh(sample);
    return 1 / (cosh * cosh);
  }

  @Override
  public void process(double[] samples, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, samples.length);
    for (int i = offset; i < offset + length; i++) {
      samples[i] = HyperbolicTangent.of(samples[i]);
    }
  }

  @Override
  public List<Double> corners() {
    return List.of();
  }
}
