package chainwright.dsp.signal;

import chainwright.quantity.SampleRate;

/**
 * The low-pass of a change of sample rate: a sinc under a Kaiser window. It passes what is below a
 * share of the lower rate, and stops what is at or above half of that rate.
 *
 * <p>Source: J. F. Kaiser and R. W. Schafer, On the use of the I0-sinh window for spectrum
 * analysis, IEEE Transactions on Acoustics, Speech, and Signal Processing 28(1), 1980 (from
 * memory), for the window and its length.
 *
 * @param from the rate of what goes in, a whole number of hertz
 * @param to the rate of what comes out, a whole number of hertz
 * @param passShare up to where it passes, as a share of the lower rate, from 0.2 to 0.49
 * @param attenuationDb how far it stops what is at or above half the lower rate [dB], from 60 to
 *     180; the ripple of its pass band is as small
 */
public record RateFilter(SampleRate from, SampleRate to, double passShare, double attenuationDb) {

  /** Up to where the usual filter passes, as a share of the lower rate. */
  private static final double USUAL_PASS_BAND = 0.45;

  private static final double USUAL_ATTENUATION_DB = 150;

  private static final double STOP_BAND = 0.5;

  /**
   * Checks the values.
   *
   * @param from the rate of what goes in
   * @param to the rate of what comes out
   * @param passShare up to where it passes
   * @param attenuationDb how far it stops [dB]
   * @throws IllegalArgumentException if a rate is no whole number of hertz, or a value outside its
   *     range
   */
  public RateFilter {
    requireWhole(from);
    requireWhole(to);
    if (!(passShare >= 0.2 && passShare <= 0.49)) {
      throw new IllegalArgumentException(
          "the pass band must reach to between 0.2 and 0.49 of the rate, but was " + passShare);
    }
    if (!(attenuationDb >= 60 && attenuationDb <= 180)) {
      throw new IllegalArgumentException(
          "the attenuation must lie between 60 and 180 dB, but was " + attenuationDb);
    }
  }

  private static void requireWhole(SampleRate rate) {
    if (rate.hertz() != Math.rint(rate.hertz())) {
      throw new IllegalArgumentException(
          "the sample rate must be a whole number of hertz, but was " + rate.hertz() + " Hz");
    }
  }

  /**
   * Returns the usual filter: flat to 0.45 of the lower rate, 150 dB down from half of it on.
   *
   * @param from the rate of what goes in, a whole number of hertz
   * @param to the rate of what comes out, a whole number of hertz
   * @return the filter
   * @throws IllegalArgumentException if a rate is no whole number of hertz
   */
  public static RateFilter usual(SampleRate from, SampleRate to) {
    return new RateFilter(from, to, USUAL_PASS_BAND, USUAL_ATTENUATION_DB);
  }

  /**
   * Asks whether there is anything to convert.
   *
   * @return whether the rates differ
   */
  public boolean isNeeded() {
    return from.hertz() != to.hertz();
  }

  /**
   * Returns the middle of the transition.
   *
   * @return the frequency at which half of the amplitude passes [Hz]
   */
  public double cutoffHertz() {
    return (passShare + STOP_BAND) / 2 * lowerHertz();
  }

  /**
   * Returns how far the filter goes to each side, and so how far it looks ahead.
   *
   * @return the reach [frames of what goes in]; 0 where there is nothing to convert
   */
  public int reachFrames() {
    if (!isNeeded()) {
      return 0;
    }
    double transition = 2 * Math.PI * (STOP_BAND - passShare) * lowerHertz() / from.hertz();
    return KaiserWindow.order(attenuationDb, transition) / 2 + 1;
  }

  /**
   * Returns the window.
   *
   * @return the window of the sinc
   */
  public KaiserWindow window() {
    return KaiserWindow.ofAttenuation(attenuationDb);
  }

  private double lowerHertz() {
    return Math.min(from.hertz(), to.hertz());
  }
}
