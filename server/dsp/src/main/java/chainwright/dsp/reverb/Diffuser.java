package chainwright.dsp.reverb;

import java.util.Arrays;

/**
 * All-passes in a row, which make many pulses of one and leave every frequency its level.
 *
 * <p>Source: M. R. Schroeder, "Natural Sounding Artificial Reverberation", JAES 10(3), 1962, the
 * all-pass (z⁻ᵈ − g) / (1 − g z⁻ᵈ); from memory.
 */
final class Diffuser {

  /** The gain around each all-pass; beyond 0.7 a single one rings. Common practice, no source. */
  private static final double FEEDBACK = 0.6;

  private static final double NOTHING = 1e-30;

  private final double[][] rings;
  private final int[] positions;

  /**
   * Makes all-passes that hold silence.
   *
   * @param lengths the delay of each [frames], ≥ 1
   */
  Diffuser(int[] lengths) {
    rings = new double[lengths.length][];
    for (int stage = 0; stage < lengths.length; stage++) {
      rings[stage] = new double[lengths[stage]];
    }
    positions = new int[lengths.length];
  }

  /** Processes the first samples of an array in place. */
  void process(double[] samples, int count) {
    for (int stage = 0; stage < rings.length; stage++) {
      double[] ring = rings[stage];
      int at = positions[stage];
      for (int i = 0; i < count; i++) {
        double waited = ring[at];
        double entering = samples[i] + FEEDBACK * waited;
        ring[at] = Math.abs(entering) < NOTHING ? 0 : entering;
        samples[i] = waited - FEEDBACK * entering;
        at = at + 1 == ring.length ? 0 : at + 1;
      }
      positions[stage] = at;
    }
  }

  void reset() {
    for (double[] ring : rings) {
      Arrays.fill(ring, 0);
    }
    Arrays.fill(positions, 0);
  }

  /** Returns when the energy comes out that goes into such all-passes. */
  static double[] spread(EnergyFlow flow, double[] energy, int[] lengths) {
    return flow.throughAllPasses(energy, lengths, FEEDBACK);
  }

  /** Returns how many frames such all-passes go on, until they have fallen by 90 dB. */
  static int tailFrames(int[] lengths) {
    // Each falls by its feedback every time around; together, as if the longest came last.
    double rounds = 90 / (-20 * Math.log10(FEEDBACK));
    return (int)
        Math.ceil(Arrays.stream(lengths).sum() + rounds * Arrays.stream(lengths).max().orElse(0));
  }
}
