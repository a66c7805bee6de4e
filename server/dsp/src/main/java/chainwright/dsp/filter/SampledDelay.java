package chainwright.dsp.filter;

import chainwright.quantity.SampleRate;
import org.jspecify.annotations.Nullable;

/**
 * A delay of a sampled signal, of a whole number of frames or not, as it can be made: between the
 * frames the wave is interpolated.
 *
 * <p>A whole delay is exact. Else the interpolation is a windowed sinc over {@value #TAPS} frames,
 * flat within 0.01 dB and late by what is meant up to 0.45 of the rate; toward half the rate it
 * falls.
 *
 * <p>Source: the Kaiser window and its parameter for 80 dB: J. F. Kaiser, "Nonrecursive digital
 * filter design using the I0-sinh window function", Proc. IEEE ISCAS, 1974 (from memory).
 *
 * @param frames the delay [frames], finite; below 0 looks ahead
 * @param rate the sample rate
 */
public record SampledDelay(double frames, SampleRate rate) implements Response {

  /** How many frames the interpolation reaches over. */
  public static final int TAPS = 64;

  private static final double BETA = 7.857;

  /** A delay this near to a whole number of frames is taken as whole. */
  private static final double WHOLE = 1e-9;

  /**
   * Checks the delay.
   *
   * @param frames the delay [frames]
   * @param rate the sample rate
   * @throws IllegalArgumentException if the delay is not finite
   */
  public SampledDelay {
    if (!Double.isFinite(frames)) {
      throw new IllegalArgumentException("the delay must be finite, but was " + frames + " frames");
    }
    frames = Math.abs(frames - Math.rint(frames)) < WHOLE ? Math.rint(frames) : frames;
  }

  /**
   * Asks whether the delay is a whole number of frames.
   *
   * @return whether nothing has to be interpolated
   */
  public boolean isWhole() {
    return frames == Math.rint(frames);
  }

  /**
   * Returns the weights of the interpolation, whose own delay is {@code TAPS / 2 - 1} frames and
   * the fraction of {@link #frames}.
   *
   * @return the weights, the newest frame first, with the sum 1
   */
  public double[] toWeights() {
    double centre = TAPS / 2.0 - 1 + (frames - Math.floor(frames));
    double[] weights = new double[TAPS];
    double sum = 0;
    for (int k = 0; k < TAPS; k++) {
      double x = k - centre;
      double share = x / (TAPS / 2.0);
      double window = Math.abs(share) >= 1 ? 0 : bessel(BETA * Math.sqrt(1 - share * share));
      weights[k] = window * (x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
      sum += weights[k];
    }
    for (int k = 0; k < TAPS; k++) {
      weights[k] /= sum;
    }
    return weights;
  }

  /** The modified Bessel function of the first kind and order 0, by its power series. */
  private static double bessel(double x) {
    double term = 1;
    double sum = 1;
    for (int k = 1; term > 1e-17 * sum; k++) {
      double factor = x / (2 * k);
      term *= factor * factor;
      sum += term;
    }
    return sum;
  }

  @Override
  public void multiply(double[] hertz, double[] re, double[] im) {
    double @Nullable [] weights = isWhole() ? null : toWeights();
    for (int i = 0; i < hertz.length; i++) {
      double step = 2 * Math.PI * hertz[i] / rate.hertz();
      double[] deviation = deviation(weights, step);
      double cos = Math.cos(step * frames);
      double sin = -Math.sin(step * frames);
      double hr = cos * deviation[0] - sin * deviation[1];
      double hi = cos * deviation[1] + sin * deviation[0];
      double old = re[i];
      re[i] = old * hr - im[i] * hi;
      im[i] = old * hi + im[i] * hr;
    }
  }

  @Override
  public void addPhase(double[] hertz, double[] radians) {
    double @Nullable [] weights = isWhole() ? null : toWeights();
    for (int i = 0; i < hertz.length; i++) {
      double step = 2 * Math.PI * hertz[i] / rate.hertz();
      double[] deviation = deviation(weights, step);
      radians[i] += Math.atan2(deviation[1], deviation[0]) - step * frames;
    }
  }

  @Override
  public void addLogarithmicDerivative(double[] hertz, double[] re, double[] im) {
    double @Nullable [] weights = isWhole() ? null : toWeights();
    double seconds = 1 / rate.hertz();
    for (int i = 0; i < hertz.length; i++) {
      im[i] -= frames * seconds;
      if (weights != null) {
        double step = 2 * Math.PI * hertz[i] * seconds;
        double[] value = deviation(weights, step);
        double[] slope = slope(weights, step);
        re[i] += seconds * LogarithmicDerivative.real(value[0], value[1], slope[0], slope[1]);
        im[i] += seconds * LogarithmicDerivative.imaginary(value[0], value[1], slope[0], slope[1]);
      }
    }
  }

  /**
   * Returns by how much the interpolation differs from the delay that is meant: 1 if not at all.
   */
  private double[] deviation(double @Nullable [] weights, double step) {
    if (weights == null) {
      return new double[] {1, 0};
    }
    double centre = TAPS / 2.0 - 1 + (frames - Math.floor(frames));
    double re = 0;
    double im = 0;
    for (int k = 0; k < TAPS; k++) {
      re += weights[k] * Math.cos(step * (k - centre));
      im -= weights[k] * Math.sin(step * (k - centre));
    }
    return new double[] {re, im};
  }

  private double[] slope(double[] weights, double step) {
    double centre = TAPS / 2.0 - 1 + (frames - Math.floor(frames));
    double re = 0;
    double im = 0;
    for (int k = 0; k < TAPS; k++) {
      double x = k - centre;
      re -= weights[k] * x * Math.sin(step * x);
      im -= weights[k] * x * Math.cos(step * x);
    }
    return new double[] {re, im};
  }
}
