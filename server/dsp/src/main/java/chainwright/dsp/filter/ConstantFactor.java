package chainwright.dsp.filter;

/**
 * A gain that is the same at every frequency, such as 0.5 for -6.02 dB.
 *
 * @param factor the factor, no unit, finite; negative turns the polarity, 0 lets nothing through
 */
public record ConstantFactor(double factor) implements Response {

  /**
   * Checks the value.
   *
   * @param factor the factor
   * @throws IllegalArgumentException if the factor is not finite
   */
  public ConstantFactor {
    if (!Double.isFinite(factor)) {
      throw new IllegalArgumentException("the factor must be finite, but was " + factor);
    }
  }

  @Override
  public void multiply(double[] hertz, double[] re, double[] im) {
    for (int i = 0; i < hertz.length; i++) {
      re[i] *= factor;
      im[i] *= factor;
    }
  }

  @Override
  public double boundDecibels() {
    return 20 * Math.log10(Math.abs(factor));
  }

  @Override
  public void addPhase(double[] hertz, double[] radians) {
    if (factor < 0) {
      for (int i = 0; i < hertz.length; i++) {
        radians[i] += Math.PI;
      }
    }
  }

  @Override
  public void addLogarithmicDerivative(double[] hertz, double[] re, double[] im) {
    // The logarithm of a constant does not change with frequency.
  }
}
