package chainwright.dsp.nonlinear;

import java.util.List;

/**
 * A straight line bent by a square, y = x + k x²: a second harmonic and no other.
 *
 * @param secondOrder the factor k of the square, finite
 */
public record QuadraticShaper(double secondOrder) implements Shaper {

  /**
   * Checks the factor.
   *
   * @param secondOrder the factor of the square
   * @throws IllegalArgumentException if it is not finite
   */
  public QuadraticShaper {
    if (!Double.isFinite(secondOrder)) {
      throw new IllegalArgumentException(
          "the factor of the square must be finite, but was " + secondOrder);
    }
  }

  @Override
  public double shape(double sample) {
    return sample + secondOrder * sample * sample;
  }

  @Override
  public double slope(double sample) {
    return 1 + 2 * secondOrder * sample;
  }

  @Override
  public List<Double> corners() {
    return List.of();
  }

  /**
   * {@inheritDoc}
   *
   * <p>Source: sin²θ = (1 − cos 2θ)/2, so the offset is k d²/2 and the second harmonic −k d²/2 on
   * the cosine.
   */
  @Override
  public Harmonics harmonicsOfSine(double peakAmplitude, int count) {
    Harmonics.requireSine(peakAmplitude, count);
    double half = secondOrder * peakAmplitude * peakAmplitude / 2;
    double[] sines = new double[count + 1];
    double[] cosines = new double[count + 1];
    sines[1] = peakAmplitude;
    cosines[0] = half;
    if (count >= 2) {
      cosines[2] = -half;
    }
    return new Harmonics(sines, cosines);
  }
}
