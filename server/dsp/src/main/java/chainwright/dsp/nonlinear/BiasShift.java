package chainwright.dsp.nonlinear;

/**
 * How the bias of a valve gives way to an overload: it moves down by the mean of what rises above a
 * limit, as grid current charges a coupling capacitor, and recovers in the same time.
 *
 * <p>Source: common practice, no source; the model is ours.
 *
 * @param limit what may be reached before the curve, at its input, above 0
 * @param recoverySeconds the time constant of the mean, in which 63 % of a shift come or go [s],
 *     above 0
 */
record BiasShift(double limit, double recoverySeconds) {

  /** 12 dB above alignment, with the drive: what exceeds this is an overload; ours. */
  static final double LIMIT_DBFS = SaturationModel.ALIGNMENT_LEVEL_DBFS + 12;

  /** What is left after a fall of 90 dB. */
  private static final double LEFT = Math.pow(10, -90 / 20.0);

  BiasShift {
    if (!(limit > 0 && recoverySeconds > 0)) {
      throw new IllegalArgumentException(
          "the limit and the recovery must be above 0, but were "
              + limit
              + " and "
              + recoverySeconds
              + " s");
    }
  }

  /** Returns the shaper that a settled tone meets whose period is short against the recovery. */
  Shaper settled(Shaper base, double peakAmplitude) {
    return peakAmplitude <= limit ? base : new ShiftedShaper(base, mean(peakAmplitude));
  }

  /** The mean of what a sine A sin x has over the limit L: (√(A² − L²) − L arccos(L / A)) / π. */
  private double mean(double peakAmplitude) {
    double over = Math.sqrt(peakAmplitude * peakAmplitude - limit * limit);
    return (over - limit * Math.acos(limit / peakAmplitude)) / Math.PI;
  }

  /** Returns how long a shift is to be heard [s]. */
  double tailSeconds() {
    return -Math.log(LEFT) * recoverySeconds;
  }

  /** The bias of one channel at work. */
  static final class Running {

    /** Far below any meaning, above the subnormal numbers, which are slow. */
    private static final double NOTHING = 1e-200;

    private final double limit;
    private final double kept;
    private double shift;

    Running(BiasShift design, double sampleRateHz) {
      limit = design.limit;
      kept = Math.exp(-1 / (design.recoverySeconds * sampleRateHz));
    }

    /** Moves finite samples in place. */
    void process(double[] samples, int start, int count) {
      for (int i = start; i < start + count; i++) {
        double over = Math.max(0, samples[i] - limit);
        shift = over + kept * (shift - over);
        samples[i] -= shift;
      }
      shift = shift < NOTHING ? 0 : shift;
    }

    void reset() {
      shift = 0;
    }
  }
}
