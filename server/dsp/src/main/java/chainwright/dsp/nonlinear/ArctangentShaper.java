package chainwright.dsp.nonlinear;

import java.util.List;

/** The arctangent, y = arctan x: smooth, symmetric, slower to reach its limit of ±π/2 than tanh. */
public record ArctangentShaper() implements Shaper {

  @Override
  public double shape(double sample) {
    return Math.atan(sample);
  }

  @Override
  public double slope(double sample) {
    return 1 / (1 + sample * sample);
  }

  @Override
  public List<Double> corners() {
    return List.of();
  }

  /**
   * {@inheritDoc}
   *
   * <p>Source: Hn = (2/n) ρⁿ for odd n with ρ = (√(1 + d²) − 1)/d, the Fourier series of arctan(d
   * sin θ).
   */
  @Override
  public Harmonics harmonicsOfSine(double peakAmplitude, int count) {
    Harmonics.requireSine(peakAmplitude, count);
    // The same as (√(1 + d²) − 1)/d, without its cancellation at small d.
    double rho = peakAmplitude / (Math.sqrt(1 + peakAmplitude * peakAmplitude) + 1);
    return Harmonics.ofOddSines(count, n -> 2.0 / n * Math.pow(rho, n));
  }
}
