package chainwright.dsp.repair;

/**
 * The lengths of a repair of plosives, each in frames.
 *
 * @param mean that of each mean of the low-pass, ≥ 1
 * @param peak for how long a wave may fall until its level falls, ≥ 1
 * @param longest for how long the low band may rise and is still a thump, ≥ 1
 * @param ramp half of what the gain takes to fall and to rise, ≥ 1
 */
record PlosiveFrames(int mean, int peak, int longest, int ramp) {

  int lowPassLatency() {
    return PlosiveLane.MEANS / 2 * (mean - 1);
  }

  int latency() {
    return lowPassLatency() + peak - 1 + longest - 1 + 2 * (ramp - 1);
  }
}
