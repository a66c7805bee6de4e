package chainwright.dsp.signal;

/**
 * A gain of every channel alike.
 *
 * @param factor the factor, no unit, finite; negative turns the polarity
 */
public record FactorDesign(double factor) implements ProcessorDesign, Processor {

  /**
   * Checks the factor.
   *
   * @param factor the factor
   * @throws IllegalArgumentException if it is not finite
   */
  public FactorDesign {
    if (!Double.isFinite(factor)) {
      throw new IllegalArgumentException("the factor must be finite, but was " + factor);
    }
  }

  /**
   * Makes a gain from decibels.
   *
   * @param gainDb the gain [dB], finite
   * @return the design
   */
  public static FactorDesign ofGainDb(double gainDb) {
    return new FactorDesign(Math.pow(10, gainDb / 20));
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return this;
  }

  @Override
  public void process(double[][] channels, int from, int to) {
    if (factor == 1) {
      return;
    }
    for (double[] channel : channels) {
      for (int i = from; i < to; i++) {
        channel[i] *= factor;
      }
    }
  }

  @Override
  public void reset() {
    // A gain has no state.
  }
}
