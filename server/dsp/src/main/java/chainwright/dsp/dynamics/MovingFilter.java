package chainwright.dsp.dynamics;

/**
 * A second-order equaliser of one channel whose gain moves from sample to sample.
 *
 * <p>With a gain that stands still it is the bilinear transform of the cookbook's bell or shelf.
 * Its state are the integrals of the state-variable form, which stay meaningful while coefficients
 * move, where those of a direct form would click.
 *
 * <p>Source: the prototypes of R. Bristow-Johnson, "Audio EQ Cookbook", W3C Group Note, written as
 * a state-variable filter and integrated by the trapezoidal rule, the bilinear transform; the
 * derivation is ours.
 */
final class MovingFilter {

  private final MovingBandDesign.Shape shape;
  private final double warped;
  private final double damping;
  private double first;
  private double second;
  private double lastDb;
  private double g;
  private double k;
  private double gainOfInput;
  private double gainOfBand;
  private double gainOfLow;

  /**
   * Makes a filter at rest.
   *
   * @param shape bell or shelf
   * @param frequencyHz its centre or cutoff [Hz], above 0 and below half the rate
   * @param quality its quality factor, above 0
   * @param sampleRateHz the sample rate [Hz]
   */
  MovingFilter(
      MovingBandDesign.Shape shape, double frequencyHz, double quality, double sampleRateHz) {
    if (!(frequencyHz > 0 && frequencyHz < sampleRateHz / 2 && quality > 0)) {
      throw new IllegalArgumentException(
          "the frequency must lie between 0 Hz and "
              + sampleRateHz / 2
              + " Hz and the quality factor be above 0, but were "
              + frequencyHz
              + " Hz and "
              + quality);
    }
    this.shape = shape;
    warped = Math.tan(Math.PI * frequencyHz / sampleRateHz);
    damping = 1 / quality;
    setGain(0);
  }

  /** Takes a sample and the filter's gain at that moment [dB]. */
  double process(double sample, double gainDb) {
    if (gainDb != lastDb) {
      setGain(gainDb);
    }
    double difference = sample - second;
    double a = 1 / (1 + g * (g + k));
    double band = a * (first + g * difference);
    double low = second + g * band;
    first = 2 * band - first;
    second = 2 * low - second;
    return gainOfInput * sample + gainOfBand * band + gainOfLow * low;
  }

  private void setGain(double gainDb) {
    lastDb = gainDb;
    double root = Math.pow(10, gainDb / 40);
    switch (shape) {
      case BELL -> {
        g = warped;
        k = damping / root;
        gainOfInput = 1;
        gainOfBand = k * (root * root - 1);
        gainOfLow = 0;
      }
      case LOW_SHELF -> {
        g = warped / Math.sqrt(root);
        k = damping;
        gainOfInput = 1;
        gainOfBand = k * (root - 1);
        gainOfLow = root * root - 1;
      }
      case HIGH_SHELF -> {
        g = warped * Math.sqrt(root);
        k = damping;
        gainOfInput = root * root;
        gainOfBand = k * (1 - root) * root;
        gainOfLow = 1 - root * root;
      }
    }
  }

  void reset() {
    first = 0;
    second = 0;
    setGain(0);
  }
}
