package chainwright.dsp.signal;

/**
 * Shortens the word of each sample, after adding a noise that makes the error independent of the
 * signal in mean and power.
 *
 * <p>The noise is the sum of two uniform ones, so its density is a triangle. At a width of 2 steps
 * peak to peak the total error, noise and rounding together, has the power 3 q<sup>2</sup> / 12 at
 * all times, with the step q = 2<sup>1-bits</sup>. Source: S. P. Lipshitz, R. A. Wannamaker, J.
 * Vanderkooy, "Quantization and Dither: A Theoretical Survey", JAES 40(5), 1992; from memory.
 *
 * <p>The error is fed back so that it leaves with the response (1 - z<sup>-1</sup>)<sup>n</sup>,
 * which raises its power by 2 or 6 and moves it up in frequency. Source: the same authors,
 * "Minimally Audible Noise Shaping", JAES 39(11), 1991, simple high-pass shapers; from memory.
 *
 * <p>Each channel has a noise of its own, from the seed and the number of the channel: noises that
 * were alike would be heard in the middle. What lies above full scale is not held here. Silence
 * becomes the noise; a NaN or infinite sample passes and leaves nothing behind.
 *
 * @param bits the length of the new word, 2 to 32
 * @param widthSteps the width of the noise, peak to peak [steps of the new word], 0 (rounding
 *     alone) to 4
 * @param shape what becomes of the error's spectrum
 * @param seed what the noise begins with; the same seed gives the same noise
 */
public record DitherDesign(int bits, double widthSteps, Shape shape, long seed)
    implements ProcessorDesign {

  /** How the error leaves. */
  public enum Shape {
    /** Alike at all frequencies. */
    FLAT,
    /** Falling by 6 dB per octave towards low frequencies. */
    FIRST_ORDER,
    /** Falling by 12 dB per octave towards low frequencies. */
    SECOND_ORDER
  }

  /**
   * Checks the values.
   *
   * @param bits the length of the new word
   * @param widthSteps the width of the noise, peak to peak [steps of the new word]
   * @param shape what becomes of the error's spectrum
   * @param seed what the noise begins with
   * @throws IllegalArgumentException if a value lies outside its range
   */
  public DitherDesign {
    if (bits < 2 || bits > 32) {
      throw new IllegalArgumentException("the word must have 2 to 32 bits, but had " + bits);
    }
    if (!(widthSteps >= 0 && widthSteps <= 4)) {
      throw new IllegalArgumentException(
          "the noise must be 0 to 4 steps wide, but was " + widthSteps);
    }
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new Dither(this, wiring.channelCount());
  }
}
