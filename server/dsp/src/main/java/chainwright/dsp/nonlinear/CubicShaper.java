package chainwright.dsp.nonlinear;

import java.util.List;

/**
 * The cubic, y = x − x³/3 for |x| ≤ 1 and ±2/3 beyond: a third harmonic and, until it clips, no
 * other.
 */
public record CubicShaper() implements Shaper {

  @Override
  public double shape(double sample) {
    double x = Math.max(-1, Math.min(1, sample));
    return x - x * x * x / 3;
  }

  @Override
  public double slope(double sample) {
    double x = Math.max(-1, Math.min(1, sample));
    return 1 - x * x;
  }

  @Override
  public List<Double> corners() {
    return List.of(-1.0, 1.0);
  }

  /**
   * {@inheritDoc}
   *
   * <p>Up to an amplitude d of 1: H1 = d − d³/4, H3 = d³/12. Source: sin³θ = (3 sin θ − sin 3θ)/4.
   */
  @Override
  public Harmonics harmonicsOfSine(double peakAmplitude, int count) {
    if (!(peakAmplitude > 0 && peakAmplitude <= 1)) {
      return FourierIntegral.harmonics(this, peakAmplitude, count);
    }
    double cube = peakAmplitude * peakAmplitude * peakAmplitude;
    return Harmonics.ofOddSines(
        count, n -> n == 1 ? peakAmplitude - cube / 4 : n == 3 ? cube / 12 : 0);
  }
}
