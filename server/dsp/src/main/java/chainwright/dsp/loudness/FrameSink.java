package chainwright.dsp.loudness;

/** What takes samples that need no more checks. */
@FunctionalInterface
interface FrameSink {

  /**
   * Takes the next samples of all channels, all finite.
   *
   * @param channels the samples, [channel][sample], from index 0; not to be kept
   * @param length how many of each channel
   */
  void take(double[][] channels, int length);
}
