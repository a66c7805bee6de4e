package chainwright.dsp.filter;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * What a linear stage does to each frequency: a complex factor, its phase and its slope.
 *
 * <p>The three methods that every response defines <em>fold</em> their answer into arrays that they
 * are given, so that a chain of any length is evaluated without temporary objects: factors are
 * multiplied, phases and logarithmic derivatives are added.
 *
 * <p>Arrays have one element a frequency and the length of {@code hertz}; longer ones are filled up
 * to that length. Frequencies [Hz] are finite, 0 or more. Where the factor is 0 the magnitude is
 * negative infinity [dB] and phase and group delay are those of the immediate neighbourhood.
 */
public interface Response {

  /**
   * Multiplies complex factors in place by this response.
   *
   * @param hertz the frequencies [Hz]
   * @param re the real parts, overwritten
   * @param im the imaginary parts, overwritten
   */
  void multiply(double[] hertz, double[] re, double[] im);

  /**
   * Adds this response's continuous phase [rad], which is not wrapped to one turn.
   *
   * <p>The phase is continuous from 0 Hz upward, except for the half turn at a null. A delay of T
   * seconds adds {@code -2 pi f T}.
   *
   * @param hertz the frequencies [Hz]
   * @param radians the phases [rad], added to
   */
  void addPhase(double[] hertz, double[] radians);

  /**
   * Adds the logarithmic derivative {@code d ln H / d w} [s], where {@code w = 2 pi f}.
   *
   * <p>Its imaginary part is the negative group delay, its real part the slope of the magnitude
   * [neper per rad/s]. It is what lets a sum of paths have an exact group delay.
   *
   * @param hertz the frequencies [Hz]
   * @param re the real parts [s], added to
   * @param im the imaginary parts [s], added to
   */
  void addLogarithmicDerivative(double[] hertz, double[] re, double[] im);

  /**
   * Returns a level that the magnitude nowhere exceeds, without looking at single frequencies, so
   * that who asks for a peak need not search where there can be none.
   *
   * @return the level [dB]; positive infinity where none is known
   */
  default double boundDecibels() {
    return Double.POSITIVE_INFINITY;
  }

  /**
   * Returns frequencies that a picture of the magnitude must not miss, since it bends there within
   * less than a third of an octave: the centre of what is narrow, and points on its flanks.
   *
   * @return the frequencies [Hz], in any order
   */
  default DoubleStream narrowHertz() {
    return DoubleStream.empty();
  }

  /**
   * Evaluates the complex factors.
   *
   * @param hertz the frequencies [Hz]
   * @param re receives the real parts
   * @param im receives the imaginary parts
   */
  default void evaluate(double[] hertz, double[] re, double[] im) {
    Arrays.fill(re, 0, hertz.length, 1);
    Arrays.fill(im, 0, hertz.length, 0);
    multiply(hertz, re, im);
  }

  /**
   * Returns the magnitudes, such as -3.01 at a corner.
   *
   * @param hertz the frequencies [Hz]
   * @return the magnitudes [dB], negative infinity where nothing passes
   */
  default double[] toDecibels(double[] hertz) {
    double[] re = new double[hertz.length];
    double[] im = new double[hertz.length];
    evaluate(hertz, re, im);
    for (int i = 0; i < hertz.length; i++) {
      re[i] = 10 * Math.log10(re[i] * re[i] + im[i] * im[i]);
    }
    return re;
  }

  /**
   * Returns the phases wrapped to one turn.
   *
   * @param hertz the frequencies [Hz]
   * @return the phases [rad], from -pi to pi
   */
  default double[] toWrappedPhase(double[] hertz) {
    double[] re = new double[hertz.length];
    double[] im = new double[hertz.length];
    evaluate(hertz, re, im);
    for (int i = 0; i < hertz.length; i++) {
      re[i] = Math.atan2(im[i], re[i]);
    }
    return re;
  }

  /**
   * Returns the continuous phases, see {@link #addPhase}.
   *
   * @param hertz the frequencies [Hz], rising
   * @return the phases [rad]
   */
  default double[] toPhase(double[] hertz) {
    double[] radians = new double[hertz.length];
    addPhase(hertz, radians);
    return radians;
  }

  /**
   * Returns the group delays, exact and not from differences of phases.
   *
   * @param hertz the frequencies [Hz]
   * @return the group delays [s]; NaN where paths cancel wholly
   */
  default double[] toGroupDelay(double[] hertz) {
    double[] re = new double[hertz.length];
    double[] im = new double[hertz.length];
    addLogarithmicDerivative(hertz, re, im);
    for (int i = 0; i < hertz.length; i++) {
      im[i] = 0 - im[i];
    }
    return im;
  }

  /**
   * Returns the magnitude at one frequency.
   *
   * @param hertz the frequency [Hz]
   * @return the magnitude [dB], negative infinity where nothing passes
   */
  default double decibelsAt(double hertz) {
    return toDecibels(new double[] {hertz})[0];
  }

  /**
   * Returns about what the magnitude at one frequency is, without designing what is not designed
   * yet, so that who asks whether it is far from a limit need not wait.
   *
   * @param hertz the frequency [Hz]
   * @return the magnitude, exact where nothing cheaper is known
   */
  default Estimate estimateAt(double hertz) {
    return new Estimate(decibelsAt(hertz), 0);
  }

  /**
   * Returns about what the mean of the magnitudes at some frequencies is, without designing what is
   * not designed yet.
   *
   * @param hertz the frequencies [Hz], at least one
   * @return the mean of the decibels, exact where nothing cheaper is known
   */
  default Estimate estimateMean(double[] hertz) {
    double sumDb = 0;
    for (double decibels : toDecibels(hertz)) {
      sumDb += decibels;
    }
    return new Estimate(sumDb / hertz.length, 0);
  }
}
