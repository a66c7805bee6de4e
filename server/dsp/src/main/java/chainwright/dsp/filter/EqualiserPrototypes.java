package chainwright.dsp.filter;

import chainwright.quantity.Bandwidth;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;

/**
 * The analogue prototypes of the equaliser's sections.
 *
 * <p>Source of all but the tilt, the first-order all-pass and the dip: R. Bristow-Johnson, "Audio
 * EQ Cookbook", W3C Group Note, list of analogue prototypes, with {@code A = 10^(gain/40)}. A cut
 * is the exact inverse of the boost of the same size and quality factor.
 */
public final class EqualiserPrototypes {

  private EqualiserPrototypes() {}

  /**
   * Makes a bell: 0 dB far away, the gain at the centre, half of it [dB] at the two frequencies
   * that lie {@code centre / q} apart.
   *
   * @param centre the centre frequency, above 0 Hz
   * @param gain the gain at the centre
   * @param q the quality factor; the poles of a boost have {@code A q}
   * @return the prototype
   */
  public static AnaloguePrototype bell(Frequency centre, Decibels gain, QualityFactor q) {
    double a = amplitude(gain);
    return section(centre, 1, a / q.value(), 1, 1, 1 / (a * q.value()), 1);
  }

  /**
   * Makes a low shelf: the gain at 0 Hz, half of it [dB] at the midpoint, 0 dB far above.
   *
   * @param midpoint the frequency of half the gain, above 0 Hz
   * @param gain the gain below
   * @param q the quality factor; 0.7071 is the steepest without overshoot
   * @return the prototype
   */
  public static AnaloguePrototype lowShelf(Frequency midpoint, Decibels gain, QualityFactor q) {
    double a = amplitude(gain);
    double middle = Math.sqrt(a) / q.value();
    return section(midpoint, a * a, a * middle, a, 1, middle, a);
  }

  /**
   * Makes a high shelf: 0 dB at 0 Hz, half the gain [dB] at the midpoint, the gain far above.
   *
   * @param midpoint the frequency of half the gain, above 0 Hz
   * @param gain the gain above
   * @param q the quality factor; 0.7071 is the steepest without overshoot
   * @return the prototype
   */
  public static AnaloguePrototype highShelf(Frequency midpoint, Decibels gain, QualityFactor q) {
    double a = amplitude(gain);
    double middle = Math.sqrt(a) / q.value();
    return section(midpoint, a, a * middle, a * a, a, middle, 1);
  }

  /**
   * Returns the quality factor of a shelf whose steepness is given as S.
   *
   * <p>Source: Audio EQ Cookbook, {@code 1/Q = sqrt((A + 1/A) (1/S - 1) + 2)}. S 1 is Q 0.7071 at
   * any gain, the steepest slope that does not overshoot.
   *
   * @param steepness S, no unit, above 0; above 1 the shelf overshoots
   * @param gain the gain of the shelf
   * @return the quality factor
   * @throws IllegalArgumentException if no real filter has that steepness at that gain
   */
  public static QualityFactor shelfQuality(double steepness, Decibels gain) {
    double a = amplitude(gain);
    double square = (a + 1 / a) * (1 / steepness - 1) + 2;
    if (!(steepness > 0 && square > 0)) {
      throw new IllegalArgumentException(
          "the steepness of a shelf of "
              + gain
              + " must lie between 0 and "
              + (a + 1 / a) / (a + 1 / a - 2)
              + ", but was "
              + steepness);
    }
    return new QualityFactor(1 / Math.sqrt(square));
  }

  /**
   * Returns the quality factor that leaves a given width in octaves, to first order, after the
   * bilinear transform has bent the frequency axis.
   *
   * <p>Source: Audio EQ Cookbook, {@code 1/Q = 2 sinh(ln(2)/2 BW w0/sin(w0))}.
   *
   * @param width the width
   * @param centre the centre frequency, below half the rate
   * @param rate the sample rate
   * @return the quality factor of the prototype
   * @throws IllegalArgumentException if the centre is not below half the rate
   */
  public static QualityFactor bilinearQuality(Bandwidth width, Frequency centre, SampleRate rate) {
    if (!(centre.hertz() > 0 && centre.isBelow(rate.nyquist()))) {
      throw new IllegalArgumentException(
          "the centre must lie between 0 Hz and " + rate.nyquist() + ", but was " + centre);
    }
    double angle = 2 * Math.PI * centre.hertz() / rate.hertz();
    return QualityFactor.ofBandwidth(new Bandwidth(width.octaves() * angle / Math.sin(angle)));
  }

  /**
   * Makes a notch: nothing at the centre, 0 dB far away, -3 dB at the two frequencies that lie
   * {@code centre / q} apart.
   *
   * @param centre the frequency that is removed, above 0 Hz
   * @param q the quality factor
   * @return the prototype
   */
  public static AnaloguePrototype notch(Frequency centre, QualityFactor q) {
    return section(centre, 1, 0, 1, 1, 1 / q.value(), 1);
  }

  /**
   * Makes a notch that does not go all the way down.
   *
   * <p>Definition: {@code H(s) = (s^2 + g s/Q + 1) / (s^2 + s/Q + 1)} with {@code g =
   * 10^(depth/20)}, which is the notch where g is 0; common practice, no source.
   *
   * @param centre the frequency that is reduced most, above 0 Hz
   * @param q the quality factor of the poles
   * @param depth the gain at the centre, below 0 dB
   * @return the prototype
   */
  public static AnaloguePrototype dip(Frequency centre, QualityFactor q, Decibels depth) {
    double factor = Math.pow(10, depth.decibels() / 20);
    return section(centre, 1, factor / q.value(), 1, 1, 1 / q.value(), 1);
  }

  /**
   * Makes a band-pass: 0 dB at the centre, -3 dB at the two frequencies that lie {@code centre / q}
   * apart.
   *
   * @param centre the centre frequency, above 0 Hz
   * @param q the quality factor
   * @return the prototype
   */
  public static AnaloguePrototype bandPass(Frequency centre, QualityFactor q) {
    return section(centre, 0, 1 / q.value(), 0, 1, 1 / q.value(), 1);
  }

  /**
   * Makes a low-pass of second order whose gain at the cutoff is the quality factor.
   *
   * @param cutoff the cutoff frequency, above 0 Hz
   * @param q the quality factor; 0.7071 is the flattest
   * @return the prototype
   */
  public static AnaloguePrototype lowPass(Frequency cutoff, QualityFactor q) {
    return section(cutoff, 1, 0, 0, 1, 1 / q.value(), 1);
  }

  /**
   * Makes a high-pass of second order whose gain at the cutoff is the quality factor.
   *
   * @param cutoff the cutoff frequency, above 0 Hz
   * @param q the quality factor; 0.7071 is the flattest
   * @return the prototype
   */
  public static AnaloguePrototype highPass(Frequency cutoff, QualityFactor q) {
    return section(cutoff, 0, 0, 1, 1, 1 / q.value(), 1);
  }

  /**
   * Makes an all-pass of first order: a quarter of a turn late at the frequency, half a turn far
   * above, 0 dB everywhere.
   *
   * <p>Definition: {@code H(s) = (1 - s) / (1 + s)}.
   *
   * @param frequency the frequency of -90 degrees, above 0 Hz
   * @return the prototype
   */
  public static AnaloguePrototype allPass(Frequency frequency) {
    return section(frequency, 1, -1, 0, 1, 1, 0);
  }

  /**
   * Makes an all-pass of second order: half a turn late at the frequency, a whole turn far above, 0
   * dB everywhere.
   *
   * @param frequency the frequency of -180 degrees, above 0 Hz
   * @param q the quality factor; the higher, the faster the phase turns
   * @return the prototype
   */
  public static AnaloguePrototype allPass(Frequency frequency, QualityFactor q) {
    return section(frequency, 1, -1 / q.value(), 1, 1, 1 / q.value(), 1);
  }

  /**
   * Makes a tilt of first order: the top is louder than the bottom by the given amount, half above
   * and half below the pivot's 0 dB.
   *
   * <p>Definition: {@code H(s) = (A s + 1) / (s + A)}; no standard defines a tilt.
   *
   * @param pivot the frequency that keeps its level, above 0 Hz
   * @param endToEnd the gain far above less the gain at 0 Hz
   * @return the prototype
   */
  public static AnaloguePrototype tilt(Frequency pivot, Decibels endToEnd) {
    double a = amplitude(endToEnd);
    return section(pivot, 1, a, 0, a, 1, 0);
  }

  private static double amplitude(Decibels gain) {
    return Math.pow(10, gain.decibels() / 40);
  }

  private static AnaloguePrototype section(
      Frequency corner, double n0, double n1, double n2, double d0, double d1, double d2) {
    return AnaloguePrototype.of(new AnalogueSection(corner, n0, n1, n2, d0, d1, d2));
  }
}
