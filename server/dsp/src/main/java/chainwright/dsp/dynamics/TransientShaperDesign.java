package chainwright.dsp.dynamics;

/**
 * A transient shaper: turns the beginnings of sounds and their tails up or down, without a
 * threshold.
 *
 * <p>The short-term level (RMS over 5 ms) is compared with its own smoothed course (a time constant
 * of 50 ms, in dB). While it is 12 dB or more above, the whole of the onset gain applies, and in
 * proportion below that; while it is 12 dB or more below, the tail gain likewise. A steady sound is
 * left alone, and the gain is the same at every level.
 *
 * <p>Source: common practice, no source; this definition and its constants are ours.
 *
 * @param onsetDb the gain of beginnings [dB], finite
 * @param tailDb the gain of decays [dB], finite
 */
public record TransientShaperDesign(double onsetDb, double tailDb) implements GainControl {

  /**
   * Checks the gains.
   *
   * @param onsetDb the gain of beginnings [dB]
   * @param tailDb the gain of decays [dB]
   * @throws IllegalArgumentException if a gain is not finite
   */
  public TransientShaperDesign {
    Arguments.requireFinite("the onset gain", onsetDb);
    Arguments.requireFinite("the tail gain", tailDb);
  }

  @Override
  public TransientShaper newProcessor(double sampleRateHz) {
    return new TransientShaper(this, sampleRateHz);
  }
}
