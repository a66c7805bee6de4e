package chainwright.dsp.repair;

/**
 * The lengths of a repair of plosives, each in frames.
 *
 * @param mean that of each mean of the low-pass whose band is lowered, ≥ 1
 * @param thumpMean that of each mean of the low-pass that keeps thumps, at least as long
 * @param voiceMean that of each mean of the low-pass that keeps low notes of a voice too, ≥ 1, at
 *     most as long
 * @param peak for how long a wave may fall until its level falls, ≥ 1
 * @param longest for how long the low band may rise and is still a thump, ≥ 1
 * @param ramp half of what the gain takes to fall and to rise, ≥ 1
 */
record PlosiveFrames(int mean, int thumpMean, int voiceMean, int peak, int longest, int ramp) {

  int lowPassLatency() {
    return latencyOf(mean);
  }

  int thumpLatency() {
    return latencyOf(thumpMean);
  }

  int voiceLatency() {
    return latencyOf(voiceMean);
  }

  /** By how much more the low-pass of thumps spreads what begins or ends than that of voices. */
  int spread() {
    return thumpLatency() - voiceLatency();
  }

  private static int latencyOf(int mean) {
    return PlosiveLane.MEANS / 2 * (mean - 1);
  }

  int latency() {
    return thumpLatency() + peak - 1 + spread() + longest - 1 + 2 * (ramp - 1);
  }
}
