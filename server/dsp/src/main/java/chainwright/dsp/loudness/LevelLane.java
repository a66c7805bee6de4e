package chainwright.dsp.loudness;

/** The sums of one channel that its levels are read from. */
final class LevelLane {

  private static final double SINE_REFERENCE_DB = 10 * Math.log10(2);
  private static final double NOISE_SHARE = 0.10;

  /** −200 dBFS: below the noise of any converter, above the rounding of any sum. */
  private static final double LOWEST_NOISE = 1e-20;

  private static final int NOISE_RANGE_DECIBELS = 220;
  private static final int NOISE_STEPS_PER_DECIBEL = 10;

  /** What remains of an offset's square by rounding, relative to it. */
  private static final double ROUNDING = 1e-13;

  private final PowerHistogram noise =
      new PowerHistogram(LOWEST_NOISE, NOISE_RANGE_DECIBELS, NOISE_STEPS_PER_DECIBEL);
  private final ClipCounter clips;
  private final RunningSum sum = new RunningSum();
  private final RunningSum squares = new RunningSum();
  private double peak;
  private double partSum;
  private double partSquares;
  private long stretches;

  LevelLane(double fullScale) {
    clips = new ClipCounter(fullScale);
  }

  void take(double[] samples, int from, int to) {
    double s = partSum;
    double q = partSquares;
    double largest = 0;
    for (int i = from; i < to; i++) {
      double sample = samples[i];
      s += sample;
      q += sample * sample;
      double magnitude = Math.abs(sample);
      largest = magnitude > largest ? magnitude : largest;
    }
    partSum = s;
    partSquares = q;
    peak = largest > peak ? largest : peak;
    clips.take(samples, from, to, largest);
  }

  /** Ends a stretch of so many samples. */
  void endStretch(long length) {
    double mean = partSum / length;
    double square = partSquares / length;
    double variance = square - mean * mean;
    noise.add(variance < ROUNDING * square ? 0 : variance);
    sum.add(partSum);
    squares.add(partSquares);
    partSum = 0;
    partSquares = 0;
    stretches++;
  }

  /** The sum of all squares. */
  double squares() {
    return squares.plus(partSquares);
  }

  ChannelLevels levels(long frameCount) {
    double rms = Math.sqrt(squares() / Math.max(1, frameCount));
    return new ChannelLevels(
        20 * Math.log10(peak),
        20 * Math.log10(rms) + SINE_REFERENCE_DB,
        20 * Math.log10(peak / rms),
        sum.plus(partSum) / Math.max(1, frameCount),
        noiseFloorDbfs(),
        clips.runs());
  }

  private double noiseFloorDbfs() {
    if (stretches == 0) {
      return Double.NaN;
    }
    double power = noise.percentileAbove(0, NOISE_SHARE);
    return Double.isNaN(power)
        ? Double.NEGATIVE_INFINITY
        : 10 * Math.log10(power) + SINE_REFERENCE_DB;
  }

  void reset() {
    noise.reset();
    clips.reset();
    sum.reset();
    squares.reset();
    peak = 0;
    partSum = 0;
    partSquares = 0;
    stretches = 0;
  }
}
