package chainwright.dsp.dynamics;

/** What makes a gain of a level, by design. */
public sealed interface GainControl permits CompressorDesign, GateDesign, TransientShaperDesign {

  /**
   * Starts a processor for one channel.
   *
   * @param sampleRateHz the sample rate [Hz], above 0
   * @return a processor that has heard silence
   * @throws IllegalArgumentException if the sample rate is not finite and above 0
   */
  GainProcessor newProcessor(double sampleRateHz);
}
