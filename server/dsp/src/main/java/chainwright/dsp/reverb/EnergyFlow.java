package chainwright.dsp.reverb;

/**
 * How the energy of a click goes through the parts of a room, in equal steps of time.
 *
 * <p>Pulses that have gone different ways are added as energies, as if they had nothing in common,
 * which holds on the mean for the ways of a room; of what comes between two steps each gets its
 * part. No energy is lost or gained by the steps.
 *
 * @param framesPerStep the length of a step [frames], above 0
 * @param steps the number of steps
 */
record EnergyFlow(double framesPerStep, int steps) {

  /** After so many rounds of an all-pass what is left is put into the last. */
  private static final int ROUNDS = 20;

  /** Returns the energy of a click of energy 1 at some time. */
  double[] click(double atFrame) {
    double[] now = new double[steps];
    now[0] = 1;
    double[] energy = new double[steps];
    addLater(now, atFrame, 1, energy);
    return energy;
  }

  /** Adds energy that comes later, by a factor, to other energy. */
  void addLater(double[] energy, double frames, double factor, double[] to) {
    int whole = (int) (frames / framesPerStep);
    double part = frames / framesPerStep - whole;
    for (int i = whole; i < steps; i++) {
      double later = (1 - part) * energy[i - whole];
      if (i > whole) {
        later += part * energy[i - whole - 1];
      }
      to[i] += factor * later;
    }
  }

  /** Returns what all-passes in a row, each of the same gain, make of energy. */
  double[] throughAllPasses(double[] energy, int[] lengths, double gain) {
    double[] passed = energy;
    for (int length : lengths) {
      passed = throughAllPass(passed, length, gain * gain);
    }
    return passed;
  }

  /** The pulses of (z⁻ᵈ − g) / (1 − g z⁻ᵈ): −g, then (1 − g²) gᵏ⁻¹ after k times the delay. */
  private double[] throughAllPass(double[] energy, int length, double gainSquared) {
    double[] passed = new double[steps];
    addLater(energy, 0, gainSquared, passed);
    double factor = (1 - gainSquared) * (1 - gainSquared);
    for (int round = 1; round <= ROUNDS; round++) {
      double rest = round == ROUNDS ? factor / (1 - gainSquared) : factor;
      addLater(energy, (double) round * length, rest, passed);
      factor *= gainSquared;
    }
    return passed;
  }

  /**
   * Returns the energy that leaves lines among which all that enters or comes back is divided
   * alike.
   *
   * @param entering what enters all together
   * @param lengths the lines, none shorter than a step [frames]
   * @param kept what of its energy each line leaves, below 1
   */
  double[] throughLines(double[] entering, int[] lengths, double[] kept) {
    double[] inside = entering.clone();
    double[] leaving = new double[steps];
    int[] wholes = new int[lengths.length];
    double[] now = new double[lengths.length];
    double[] before = new double[lengths.length];
    for (int k = 0; k < lengths.length; k++) {
      wholes[k] = (int) (lengths[k] / framesPerStep);
      double part = lengths[k] / framesPerStep - wholes[k];
      now[k] = (1 - part) * kept[k] / lengths.length;
      before[k] = part * kept[k] / lengths.length;
    }
    for (int i = 0; i < steps; i++) {
      double sum = 0;
      for (int k = 0; k < wholes.length; k++) {
        int at = i - wholes[k];
        if (at >= 0) {
          sum += now[k] * inside[at];
        }
        if (at >= 1) {
          sum += before[k] * inside[at - 1];
        }
      }
      leaving[i] = sum;
      inside[i] += sum;
    }
    return leaving;
  }
}
