package chainwright.dsp.dynamics;

/**
 * A running processor of one channel whose gain follows the level of its key, such as a {@link
 * Compressor} or a {@link Gate}.
 *
 * <p>The result does not depend on the size of blocks. A NaN sample comes out as NaN, counts as
 * silence for the level and leaves nothing behind; silence comes out as silence. Channels that
 * share one gain take {@link #gainDb} of a common key, such as the larger of their magnitudes.
 */
public sealed interface GainProcessor permits Compressor, Gate, TransientShaper {

  /**
   * Takes one sample of the key and returns the gain to apply with it.
   *
   * @param keySample the sample whose level counts, full scale 1.0
   * @return the gain [dB], make-up gain included
   */
  double gainDb(double keySample);

  /**
   * Takes a level in place of a sample, past the detector, and returns the gain to apply.
   *
   * @param levelDb the level [dB re full scale], finite
   * @return the gain [dB], make-up gain included
   */
  double gainOfLevelDb(double levelDb);

  /**
   * Takes the first samples of a row of the key, one by one as by {@link #gainDb}.
   *
   * @param key the samples whose level counts, full scale 1.0, none of them NaN
   * @param gainDb receives the gains [dB], make-up gain included; another array
   * @param count how many
   */
  default void gainsDb(double[] key, double[] gainDb, int count) {
    for (int i = 0; i < count; i++) {
      gainDb[i] = gainDb(key[i]);
    }
  }

  /** Returns to the initial state, as when the processor was new. */
  void reset();

  /**
   * Processes a block in place, with the samples as their own key.
   *
   * @param samples the samples of the channel, full scale 1.0
   * @param offset the first sample of the block
   * @param length the number of samples; 0 changes nothing
   * @throws IllegalArgumentException if the block does not lie within the array
   */
  default void process(double[] samples, int offset, int length) {
    process(samples, samples, offset, length);
  }

  /**
   * Processes a block in place, with another signal as its key (the side-chain).
   *
   * @param samples the samples of the channel, full scale 1.0
   * @param key the samples whose level counts, at the same indices
   * @param offset the first sample of the block
   * @param length the number of samples; 0 changes nothing
   * @throws IllegalArgumentException if the block does not lie within both arrays
   */
  default void process(double[] samples, double[] key, int offset, int length) {
    Arguments.requireRange(offset, length, Math.min(samples.length, key.length));
    for (int i = offset; i < offset + length; i++) {
      samples[i] *= Gains.toFactor(gainDb(key[i]));
    }
  }
}
