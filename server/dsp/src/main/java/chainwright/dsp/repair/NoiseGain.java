package chainwright.dsp.repair;

import java.util.Arrays;

/**
 * Finds the gain of each bin from its power and that of the noise in it: the one that gives the
 * least mean square error of the logarithm of the magnitude, but not less than a floor, and the
 * floor itself where there is probably nothing but noise.
 *
 * <p>The ratio of wanted sound to noise that it needs is decided by what was found in the frame
 * before and a small share of what this frame shows, which keeps single bins from flaring up.
 * Sources: Y. Ephraim, D. Malah, "Speech Enhancement Using a Minimum Mean-Square Error Short-Time
 * Spectral Amplitude Estimator", IEEE Transactions on Acoustics, Speech, and Signal Processing
 * 32(6), 1984 (the decision); the same, "… Log-Spectral Amplitude Estimator", 33(2), 1985 (the
 * gain); I. Cohen, B. Berdugo, "Speech Enhancement for Non-Stationary Noise Environments", Signal
 * Processing 81(11), 2001 (the probability and its part in the gain); all from memory. That the
 * powers are averaged over neighbouring bins first is ours.
 */
final class NoiseGain {

  /** What the source keeps of the frame before, and how often it takes one [s]. */
  private static final double KEPT = 0.98;

  private static final double SOURCE_HOP_SECONDS = 0.008;

  private static final double MOST_POSTERIOR = 1e6;
  private static final double LEAST_POSTERIOR = 1e-6;

  /** Ratios of wanted sound to noise, −10 and −5 dB, and how fast they are followed. */
  private static final double ABSENT = Math.pow(10, -10 / 10.0);

  private static final double PRESENT = Math.pow(10, -5 / 10.0);
  private static final double MOST_PRESENT = 0.999;
  private static final double COURSE_KEPT = 0.7;

  private final double kept;
  private final double courseKept;
  private final double floor;
  private final double leastPrior;
  private final int[] first;
  private final int[] end;

  /** The ratio that was found in the frame before. */
  private final double[] found;

  /** The smoothed course of that ratio. */
  private final double[] course;

  private final double[] powerSums;
  private final double[] noiseSums;

  /**
   * Prepares gains.
   *
   * @param binCount the number of bins, from 0 to half the sample rate
   * @param hopSeconds how often a frame comes [s]
   * @param reductionDb how far below 0 dB the floor lies, ≥ 0
   * @param smoothingOctaves over what width powers are averaged, ≥ 0
   */
  NoiseGain(int binCount, double hopSeconds, double reductionDb, double smoothingOctaves) {
    kept = Math.pow(KEPT, hopSeconds / SOURCE_HOP_SECONDS);
    courseKept = Math.pow(COURSE_KEPT, hopSeconds / SOURCE_HOP_SECONDS);
    floor = Math.pow(10, -reductionDb / 20);
    // Nothing wanted is expected to lie much below the floor.
    leastPrior = 0.1 * floor * floor;
    first = new int[binCount];
    end = new int[binCount];
    double side = Math.pow(2, smoothingOctaves / 2);
    for (int k = 0; k < binCount; k++) {
      first[k] = (int) Math.round(k / side);
      end[k] = Math.min(binCount, (int) Math.round(k * side) + 1);
    }
    found = new double[binCount];
    course = new double[binCount];
    powerSums = new double[binCount + 1];
    noiseSums = new double[binCount + 1];
  }

  /** Finds the gains of the next frame, from the floor to 1. */
  void find(double[] power, double[] noise, double[] gains) {
    for (int k = 0; k < gains.length; k++) {
      powerSums[k + 1] = powerSums[k] + power[k];
      noiseSums[k + 1] = noiseSums[k] + noise[k];
    }
    for (int k = 0; k < gains.length; k++) {
      double all = powerSums[end[k]] - powerSums[first[k]];
      double wide = noiseSums[end[k]] - noiseSums[first[k]];
      double posterior = Math.max(LEAST_POSTERIOR, Math.min(MOST_POSTERIOR, all / wide));
      double prior =
          Math.max(leastPrior, kept * found[k] + (1 - kept) * Math.max(0, posterior - 1));
      double expected = prior / (1 + prior) * posterior;
      double gain =
          Math.min(1, prior / (1 + prior) * Math.exp(ExponentialIntegral.of(expected) / 2));
      found[k] = gain * gain * posterior;
      course[k] = courseKept * course[k] + (1 - courseKept) * prior;
      double presence = presence(course[k], prior, expected);
      gains[k] = presence == 0 ? floor : Math.max(floor, floor * Math.pow(gain / floor, presence));
    }
  }

  /** The probability that there is more than noise. */
  private static double presence(double course, double prior, double expected) {
    if (course <= ABSENT) {
      return 0;
    }
    double before = Math.min(MOST_PRESENT, Math.log(course / ABSENT) / Math.log(PRESENT / ABSENT));
    return 1 / (1 + (1 - before) / before * (1 + prior) * Math.exp(-expected));
  }

  void reset() {
    Arrays.fill(found, 0);
    Arrays.fill(course, 0);
  }
}
