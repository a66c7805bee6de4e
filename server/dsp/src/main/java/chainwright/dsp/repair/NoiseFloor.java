package chainwright.dsp.repair;

import java.util.Arrays;

/**
 * Finds the power of steady noise in each bin of a row of spectra by its minimum statistics: even
 * while something sounds, a smoothed spectrum comes down to the noise now and then, and how far its
 * minimum lies under the mean of the noise is known.
 *
 * <p>Source: R. Martin, "Noise Power Spectral Density Estimation Based on Optimal Smoothing and
 * Minimum Statistics", IEEE Transactions on Speech and Audio Processing 9(5), 2001; from memory.
 * Its smoothing constants hold for a spectrum every 16 ms and are converted to ours. The window is
 * longer than its 1.5 s, since the noise meant here is steady, and a tone held over a whole window
 * counts as noise; what it does for noise that rises is left out.
 */
final class NoiseFloor {

  /** How often the source takes a spectrum [s]. */
  private static final double SOURCE_HOP_SECONDS = 0.016;

  private static final double WINDOW_SECONDS = 4;
  private static final int WINDOW_PARTS = 16;

  /** How long the mean is taken before minima are [s]; ours. */
  private static final double MEAN_SECONDS = 0.1;

  private static final double MOST_SMOOTHING = 0.96;
  private static final double LEAST_SMOOTHING = 0.3;
  private static final double MOST_MOMENT_SMOOTHING = 0.8;
  private static final double LEAST_CORRECTION = 0.7;
  private static final double CORRECTION_SMOOTHING = 0.7;

  /** Weight of the mean variance; table III of the source. */
  private static final double VARIANCE_WEIGHT = 2.12;

  /** Powers above so many times the noise are something else; ours. */
  private static final double NOISE_AT_MOST = 4;

  /** Noise smoothed as the source does has a fiftieth; ours. */
  private static final double MOST_INVERSE_FREEDOM = 0.1;

  /** Table III of the source: lengths of the window, and the mean of minima over them. */
  private static final double[] LENGTHS = {
    1, 2, 5, 8, 10, 15, 20, 30, 40, 60, 80, 120, 140, 160, 180, 220, 260, 300
  };

  private static final double[] MEANS = {
    0, 0.26, 0.48, 0.58, 0.61, 0.668, 0.705, 0.762, 0.8, 0.841, 0.865, 0.89, 0.9, 0.91, 0.92, 0.93,
    0.935, 0.94
  };

  /** Keeps quotients of silence numbers; 400 dB under full scale. */
  static final double LEAST_POWER = 1e-40;

  private final double hopsOfSource;
  private final int partFrames;
  private final int meanFrames;
  private final double[] smoothed;
  private final double[] mean;
  private final double[] meanSquare;
  private final double[] inverseFreedom;
  private final double[] noise;
  private final double[] partMinimum;
  private final double[][] minima;
  private final double[] earlierMinimum;
  private int part;
  private int frameOfPart;
  private int seen;
  private double correction;

  /** Starts without knowledge; a spectrum comes every {@code hopSeconds}. */
  NoiseFloor(int binCount, double hopSeconds) {
    hopsOfSource = hopSeconds / SOURCE_HOP_SECONDS;
    partFrames = Math.max(1, (int) Math.round(WINDOW_SECONDS / WINDOW_PARTS / hopSeconds));
    meanFrames = (int) Math.ceil(MEAN_SECONDS / hopSeconds);
    smoothed = new double[binCount];
    mean = new double[binCount];
    meanSquare = new double[binCount];
    inverseFreedom = new double[binCount];
    noise = new double[binCount];
    partMinimum = new double[binCount];
    minima = new double[WINDOW_PARTS][binCount];
    earlierMinimum = new double[binCount];
    reset();
  }

  /** Whether it has heard anything. */
  boolean isKnown() {
    return seen > 0;
  }

  /** Returns the power of the noise in each bin, not to be changed. */
  double[] power() {
    return noise;
  }

  /** Hears the next spectrum, as powers, each at least {@link #LEAST_POWER}. */
  void learn(double[] power) {
    seen++;
    double freedom = smooth(power);
    if (seen <= meanFrames) {
      System.arraycopy(smoothed, 0, noise, 0, noise.length);
      return;
    }
    follow(1 + VARIANCE_WEIGHT * Math.sqrt(freedom));
    frameOfPart++;
    if (frameOfPart == partFrames) {
      endPart();
    }
  }

  private void endPart() {
    System.arraycopy(partMinimum, 0, minima[part], 0, noise.length);
    Arrays.fill(partMinimum, Double.POSITIVE_INFINITY);
    part = (part + 1) % WINDOW_PARTS;
    frameOfPart = 0;
    System.arraycopy(minima[0], 0, earlierMinimum, 0, noise.length);
    for (double[] minimum : minima) {
      for (int k = 0; k < noise.length; k++) {
        earlierMinimum[k] = Math.min(earlierMinimum[k], minimum[k]);
      }
    }
  }

  /** Smooths as fast as each bin allows; returns the mean of its inverse degrees of freedom. */
  private double smooth(double[] power) {
    double sumSmoothed = 0;
    double sumPower = 0;
    for (int k = 0; k < power.length; k++) {
      sumSmoothed += smoothed[k];
      sumPower += power[k];
    }
    double off = sumSmoothed / sumPower - 1;
    correction =
        CORRECTION_SMOOTHING * correction
            + (1 - CORRECTION_SMOOTHING) * Math.max(LEAST_CORRECTION, 1 / (1 + off * off));
    double most = 1 - 1.0 / seen;
    double sum = 0;
    for (int k = 0; k < power.length; k++) {
      double ratio = seen == 1 ? 1 : smoothed[k] / noise[k];
      double least = Math.min(LEAST_SMOOTHING, fall(ratio));
      double apart = ratio - 1;
      double kept = Math.max(least, MOST_SMOOTHING * correction / (1 + apart * apart));
      double keptOfHop = Math.min(most, Math.pow(kept, hopsOfSource));
      smoothed[k] = keptOfHop * smoothed[k] + (1 - keptOfHop) * power[k];
      double reference = seen == 1 ? smoothed[k] : noise[k];
      // What sounds louder is no noise, and says nothing of how much noise varies.
      if (smoothed[k] < NOISE_AT_MOST * reference) {
        double moment =
            Math.min(most, Math.pow(Math.min(MOST_MOMENT_SMOOTHING, kept * kept), hopsOfSource));
        mean[k] = moment * mean[k] + (1 - moment) * smoothed[k];
        meanSquare[k] = moment * meanSquare[k] + (1 - moment) * smoothed[k] * smoothed[k];
        double variance = Math.max(0, meanSquare[k] - mean[k] * mean[k]);
        inverseFreedom[k] = Math.min(MOST_INVERSE_FREEDOM, variance / (2 * reference * reference));
      }
      sum += inverseFreedom[k];
    }
    return sum / power.length;
  }

  /** What brings a power so many times the noise down to it within 64 ms, as the source asks. */
  private static double fall(double ratio) {
    return 1 / Math.sqrt(Math.sqrt(ratio));
  }

  private void follow(double varianceFactor) {
    double frames = Math.min(seen, (double) partFrames * WINDOW_PARTS);
    double length = Math.max(1, frames * hopsOfSource);
    double meanOfMinima = meanOfMinima(length);
    for (int k = 0; k < noise.length; k++) {
      double inverse = Math.max(1e-6, inverseFreedom[k]);
      double freedom = (1 / inverse - 2 * meanOfMinima) / (1 - meanOfMinima);
      double bias = 1 + (length - 1) * 2 / freedom;
      partMinimum[k] = Math.min(partMinimum[k], smoothed[k] * bias * varianceFactor);
      noise[k] = Math.min(partMinimum[k], earlierMinimum[k]);
    }
  }

  private static double meanOfMinima(double length) {
    int i = 1;
    while (i < LENGTHS.length - 1 && LENGTHS[i] < length) {
      i++;
    }
    double share = (length - LENGTHS[i - 1]) / (LENGTHS[i] - LENGTHS[i - 1]);
    return MEANS[i - 1] + Math.min(1, share) * (MEANS[i] - MEANS[i - 1]);
  }

  /** Forgets everything. */
  void reset() {
    Arrays.fill(smoothed, 0);
    Arrays.fill(mean, 0);
    Arrays.fill(meanSquare, 0);
    Arrays.fill(inverseFreedom, 0);
    Arrays.fill(noise, LEAST_POWER);
    Arrays.fill(partMinimum, Double.POSITIVE_INFINITY);
    Arrays.fill(earlierMinimum, Double.POSITIVE_INFINITY);
    for (double[] minimum : minima) {
      Arrays.fill(minimum, Double.POSITIVE_INFINITY);
    }
    part = 0;
    frameOfPart = 0;
    seen = 0;
    correction = 1;
  }
}
