package chainwright.dsp.filter;

import chainwright.quantity.Decibels;
import chainwright.quantity.SampleRate;
import chainwright.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * A digital filter by design: second-order sections one after the other, with a gain and a delay.
 *
 * <p>Frequencies above half the rate fold, as they do in the signal. This class is immutable and
 * thread-safe and may be shared between channels; what a channel remembers is in a run type.
 *
 * @param rate the sample rate that the sections were designed for
 * @param sections the sections in order; none is a wire
 * @param gain the factor of the whole, no unit, finite; negative turns the polarity
 * @param delaySamples the pure delay of the whole [samples], finite, whole or not; below 0 looks
 *     ahead
 */
public record FilterCascade(
    SampleRate rate, List<BiquadCoefficients> sections, double gain, double delaySamples)
    implements Response {

  /**
   * Checks the values and copies the list.
   *
   * @param rate the sample rate that the sections were designed for
   * @param sections the sections in order
   * @param gain the factor of the whole
   * @param delaySamples the pure delay of the whole [samples]
   * @throws IllegalArgumentException if gain or delay is not finite
   */
  public FilterCascade {
    if (!Double.isFinite(gain) || !Double.isFinite(delaySamples)) {
      throw new IllegalArgumentException(
          "gain and delay must be finite, but were " + gain + " and " + delaySamples + " samples");
    }
    sections = List.copyOf(sections);
  }

  /**
   * Makes a cascade of sections alone.
   *
   * @param rate the sample rate
   * @param sections the sections in order
   * @return the cascade, with gain 1 and no delay
   */
  public static FilterCascade of(SampleRate rate, List<BiquadCoefficients> sections) {
    return new FilterCascade(rate, sections, 1, 0);
  }

  /**
   * Makes a gain.
   *
   * @param rate the sample rate
   * @param gain the gain [dB]
   * @return the cascade, without sections
   */
  public static FilterCascade ofGain(SampleRate rate, Decibels gain) {
    return new FilterCascade(rate, List.of(), Math.pow(10, gain.decibels() / 20), 0);
  }

  /**
   * Makes a pure delay, of a whole number of samples or not.
   *
   * @param rate the sample rate
   * @param delay the delay [s]; below 0 looks ahead
   * @return the cascade, without sections
   */
  public static FilterCascade ofDelay(SampleRate rate, TimeSpan delay) {
    return new FilterCascade(rate, List.of(), 1, delay.seconds() * rate.hertz());
  }

  /**
   * Makes a turn of polarity: every sample changes sign.
   *
   * @param rate the sample rate
   * @return the cascade, without sections
   */
  public static FilterCascade ofInvertedPolarity(SampleRate rate) {
    return new FilterCascade(rate, List.of(), -1, 0);
  }

  /**
   * Returns this cascade followed by another.
   *
   * @param next what follows, at the same rate
   * @return both as one
   * @throws IllegalArgumentException if the rates differ
   */
  public FilterCascade then(FilterCascade next) {
    // To compare records links their equals first, which costs the first hover more than its plot.
    if (rate.hertz() != next.rate.hertz()) {
      throw new IllegalArgumentException(
          "both filters must have one sample rate, but had " + rate + " and " + next.rate);
    }
    List<BiquadCoefficients> all = new ArrayList<>(sections);
    all.addAll(next.sections);
    return new FilterCascade(rate, all, gain * next.gain, delaySamples + next.delaySamples);
  }

  /**
   * Returns this cascade with its polarity turned.
   *
   * @return the same with the opposite gain
   */
  public FilterCascade withInvertedPolarity() {
    return new FilterCascade(rate, sections, -gain, delaySamples);
  }

  /**
   * Asks whether every section is stable.
   *
   * @return whether the filter comes to rest
   */
  public boolean isStable() {
    return sections.stream().allMatch(BiquadCoefficients::isStable);
  }

  @Override
  public void multiply(double[] hertz, double[] re, double[] im) {
    for (int i = 0; i < hertz.length; i++) {
      double half = Math.PI * hertz[i] / rate.hertz();
      double sinHalf = Math.sin(half);
      double cosHalf = Math.cos(half);
      double sinSquared = sinHalf * sinHalf;
      double cosSquared = cosHalf * cosHalf;
      double sine = 2 * sinHalf * cosHalf;
      double r = re[i] * gain;
      double m = im[i] * gain;
      for (int k = 0; k < sections.size(); k++) {
        BiquadCoefficients c = sections.get(k);
        double nr = c.numeratorReal(sinSquared, cosSquared);
        double ni = c.numeratorImaginary(sine);
        double dr = c.denominatorReal(sinSquared, cosSquared);
        double di = c.denominatorImaginary(sine);
        double size = dr * dr + di * di;
        double hr = (nr * dr + ni * di) / size;
        double hi = (ni * dr - nr * di) / size;
        double old = r;
        r = old * hr - m * hi;
        m = old * hi + m * hr;
      }
      if (delaySamples != 0) {
        double turn = -2 * half * delaySamples;
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        double old = r;
        r = old * cos - m * sin;
        m = old * sin + m * cos;
      }
      re[i] = r;
      im[i] = m;
    }
  }

  @Override
  public double boundDecibels() {
    double square = gain * gain;
    for (BiquadCoefficients section : sections) {
      square *= section.highestMagnitudeSquared();
    }
    return 10 * Math.log10(square);
  }

  @Override
  public void addPhase(double[] hertz, double[] radians) {
    double atRest = gain < 0 ? Math.PI : 0;
    for (int i = 0; i < hertz.length; i++) {
      double half = Math.PI * hertz[i] / rate.hertz();
      double sinHalf = Math.sin(half);
      double cosHalf = Math.cos(half);
      double sinSquared = sinHalf * sinHalf;
      double cosSquared = cosHalf * cosHalf;
      double sine = 2 * sinHalf * cosHalf;
      double sum = atRest - 2 * half * delaySamples;
      // The imaginary parts keep their sign from 0 Hz to half the rate, so that neither arc tangent
      // jumps on the way.
      for (int k = 0; k < sections.size(); k++) {
        BiquadCoefficients c = sections.get(k);
        sum +=
            Math.atan2(c.numeratorImaginary(sine), c.numeratorReal(sinSquared, cosSquared))
                - Math.atan2(
                    c.denominatorImaginary(sine), c.denominatorReal(sinSquared, cosSquared));
      }
      radians[i] += sum;
    }
  }

  @Override
  public void addLogarithmicDerivative(double[] hertz, double[] re, double[] im) {
    double secondsPerSample = 1 / rate.hertz();
    for (int i = 0; i < hertz.length; i++) {
      double half = Math.PI * hertz[i] / rate.hertz();
      im[i] -= delaySamples * secondsPerSample;
      for (int k = 0; k < sections.size(); k++) {
        addSection(sections.get(k), half, secondsPerSample, i, re, im);
      }
    }
  }

  private static void addSection(
      BiquadCoefficients c,
      double halfAngle,
      double secondsPerSample,
      int i,
      double[] re,
      double[] im) {
    double half = halfAngle;
    double sinHalf = Math.sin(half);
    double cosHalf = Math.cos(half);
    double nr = c.numeratorReal(sinHalf * sinHalf, cosHalf * cosHalf);
    double ni = c.numeratorImaginary(2 * sinHalf * cosHalf);
    if (nr == 0 && ni == 0) {
      half += LogarithmicDerivative.NUDGE;
      sinHalf = Math.sin(half);
      cosHalf = Math.cos(half);
      nr = c.numeratorReal(sinHalf * sinHalf, cosHalf * cosHalf);
      ni = c.numeratorImaginary(2 * sinHalf * cosHalf);
    }
    double sine = 2 * sinHalf * cosHalf;
    double cosine = cosHalf * cosHalf - sinHalf * sinHalf;
    double dr = c.denominatorReal(sinHalf * sinHalf, cosHalf * cosHalf);
    double di = c.denominatorImaginary(sine);
    double nrSlope = c.numeratorRealSlope(sine);
    double niSlope = c.numeratorImaginary(cosine);
    double drSlope = c.denominatorRealSlope(sine);
    double diSlope = c.denominatorImaginary(cosine);
    re[i] +=
        secondsPerSample
            * (LogarithmicDerivative.real(nr, ni, nrSlope, niSlope)
                - LogarithmicDerivative.real(dr, di, drSlope, diSlope));
    im[i] +=
        secondsPerSample
            * (LogarithmicDerivative.imaginary(nr, ni, nrSlope, niSlope)
                - LogarithmicDerivative.imaginary(dr, di, drSlope, diSlope));
  }
}
