package chainwright.dsp.dynamics;

/**
 * A running detector of one channel: samples in, level in dB out.
 *
 * <p>Levels are kept between −120 dB and +300 dB. NaN counts as silence, and leaves nothing behind
 * in the state.
 */
public final class LevelDetector {

  /** The level of silence [dB re full scale]: −120. */
  public static final double FLOOR_DB = -120;

  private static final double LOWEST_MAGNITUDE = 1e-6;
  private static final double LOWEST_SQUARE = LOWEST_MAGNITUDE * LOWEST_MAGNITUDE;
  private static final double HIGHEST_MAGNITUDE = 1e15;

  /** The share of the old mean square that a sample keeps; negative for a peak detector. */
  private final double keptShare;

  private double meanSquare;

  private LevelDetector(double keptShare) {
    this.keptShare = keptShare;
  }

  static LevelDetector ofPeak(double sampleRateHz) {
    Arguments.requireFinitePositive("the sample rate", sampleRateHz);
    return new LevelDetector(-1);
  }

  static LevelDetector ofRms(double windowSeconds, double sampleRateHz) {
    return new LevelDetector(GainSmoother.coefficient(windowSeconds, sampleRateHz));
  }

  /**
   * Takes one sample.
   *
   * @param sample the sample, full scale 1.0
   * @return the level after it [dB re full scale], in [−120, 300]
   */
  public double levelDb(double sample) {
    double magnitude = Math.abs(sample);
    if (!(magnitude > LOWEST_MAGNITUDE)) {
      magnitude = keptShare < 0 || Double.isNaN(magnitude) ? 0 : magnitude;
    } else if (magnitude > HIGHEST_MAGNITUDE) {
      magnitude = HIGHEST_MAGNITUDE;
    }
    if (keptShare < 0) {
      return magnitude > LOWEST_MAGNITUDE ? Logarithm.toDb(magnitude) : FLOOR_DB;
    }
    return meanSquareDb(keptShare * meanSquare + (1 - keptShare) * magnitude * magnitude);
  }

  /**
   * Takes the first samples of a row.
   *
   * @param samples the samples, full scale 1.0, none of them NaN
   * @param leastMagnitude what is softer counts as this soft where peaks are followed, ≥ 0
   * @param levelDb receives the level after each [dB re full scale]
   * @param count how many
   */
  void levelsDb(double[] samples, double leastMagnitude, double[] levelDb, int count) {
    if (keptShare < 0) {
      // The bits of numbers above 0 are in the order of the numbers, and quicker to compare.
      long least = Double.doubleToRawLongBits(Math.max(LOWEST_MAGNITUDE, leastMagnitude));
      long most = Double.doubleToRawLongBits(HIGHEST_MAGNITUDE);
      for (int i = 0; i < count; i++) {
        long bits = Double.doubleToRawLongBits(Math.abs(samples[i]));
        levelDb[i] = Logarithm.ofBitsToDb(Math.max(least, Math.min(most, bits)));
      }
    } else {
      for (int i = 0; i < count; i++) {
        levelDb[i] = levelDb(samples[i]);
      }
    }
  }

  /**
   * Takes the level of a steady sine for the duration of one sample, for responses to steps of
   * level.
   *
   * @param inputDb the level of the sine [dB re full scale]
   * @return the level after it [dB re full scale]
   */
  double levelOfSineDb(double inputDb) {
    if (keptShare < 0) {
      return Math.max(FLOOR_DB, inputDb);
    }
    double square = Math.pow(10, inputDb / 10) / 2;
    return meanSquareDb(keptShare * meanSquare + (1 - keptShare) * square);
  }

  /** Puts the detector where a steady sine of this level would have brought it. */
  void settle(double inputDb) {
    meanSquare = Math.pow(10, inputDb / 10) / 2;
  }

  /** Puts the detector where endless repetition of these samples would have brought it. */
  void settlePeriodic(double[] samples) {
    if (keptShare < 0) {
      return;
    }
    double sum = 0;
    double kept = 1;
    for (double sample : samples) {
      sum = keptShare * sum + (1 - keptShare) * sample * sample;
      kept *= keptShare;
    }
    // The state s that one repetition maps to itself: s = kept · s + sum.
    meanSquare = sum / (1 - kept);
  }

  /** Returns to the initial state: silence. */
  public void reset() {
    meanSquare = 0;
  }

  private double meanSquareDb(double newMeanSquare) {
    // A decaying mean must not end in denormal numbers, which are slow.
    meanSquare = newMeanSquare < 1e-30 ? 0 : newMeanSquare;
    return 2 * meanSquare > LOWEST_SQUARE ? Logarithm.toDb(2 * meanSquare) / 2 : FLOOR_DB;
  }
}
