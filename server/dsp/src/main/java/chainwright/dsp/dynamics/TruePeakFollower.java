package chainwright.dsp.dynamics;

import java.util.Arrays;

/**
 * Follows how high one channel rises between its samples.
 *
 * <p>At a place higher than both its neighbours the top of the sine through the three is taken,
 * which for a tone is its amplitude at whatever phase; it is never more than a tone at half the
 * rate could rise between two places.
 *
 * <p>Where no place could come near the ceiling, nothing is interpolated. A NaN sample counts as
 * silence, infinities count as ±10¹⁵.
 */
final class TruePeakFollower {

  /** How late a reading is [frames]: it is of the time from that sample to the next. */
  static final int LATENCY = PeakInterpolator.REACH + 1;

  private static final double LARGEST = 1e15;

  /**
   * Below this share of the ceiling the top between places, at most 1/cos(π/8) = 1.08 of the place,
   * cannot pass it.
   */
  private static final double NEAR = 0.9;

  private final PeakInterpolator interpolator;
  private final double near;
  private final double largestRise;
  private final double[] past;
  private final SlidingMaximum largestSample = new SlidingMaximum(PeakInterpolator.TAPS + 2);

  /** The last two places. */
  private double before;

  private double last;

  /**
   * Starts with silence.
   *
   * @param ceiling the amplitude about which readings matter, above 0
   * @param longest the most samples at once
   */
  TruePeakFollower(PeakInterpolator interpolator, double ceiling, int longest) {
    this.interpolator = interpolator;
    near = NEAR * ceiling;
    double cosine = Math.cos(Math.PI / (2 * interpolator.factor()));
    largestRise = 1 / (cosine * cosine);
    past = new double[PeakInterpolator.TAPS + longest];
  }

  /**
   * Raises readings to those of this channel.
   *
   * @param channel the samples
   * @param start the first sample
   * @param peaks the readings, from index 0, each late by {@link #LATENCY}
   * @param count how many
   */
  void follow(double[] channel, int start, double[] peaks, int count) {
    int kept = PeakInterpolator.TAPS;
    for (int i = 0; i < count; i++) {
      double sample = channel[start + i];
      double sound = Double.isNaN(sample) ? 0 : Math.max(-LARGEST, Math.min(LARGEST, sample));
      past[kept + i] = sound;
      boolean isFar = largestSample.next(Math.abs(sound)) * interpolator.largestGain() <= near;
      double peak = isFar ? skip() : highest(kept + i - LATENCY);
      peaks[i] = peak > peaks[i] ? peak : peaks[i];
    }
    System.arraycopy(past, count, past, 0, kept);
  }

  /** None of the last places was near, nor is any of these. */
  private double skip() {
    before = 0;
    last = 0;
    return 0;
  }

  private double highest(int sample) {
    double highest = 0;
    for (int place = 0; place < interpolator.factor(); place++) {
      double next = interpolator.at(past, sample, place);
      double magnitude = Math.abs(last);
      if (magnitude > near) {
        highest = Math.max(highest, top(next));
      }
      before = last;
      last = next;
    }
    return Math.max(highest, Math.abs(last));
  }

  /** Returns the top of the sine through the last two places and the next. */
  private double top(double next) {
    double middle = Math.abs(last);
    double left = last < 0 ? -before : before;
    double right = last < 0 ? -next : next;
    if (left > middle || right > middle) {
      return middle;
    }
    // With places a h apart, left + right = 2 middle cos h and right − left = 2 A sin h sin θ.
    double cosine = (left + right) / (2 * middle);
    double squaredSine = 1 - cosine * cosine;
    double half = (right - left) / 2;
    double square = middle * middle;
    double rise = squaredSine > 1e-12 ? half * half / squaredSine : 0;
    return Math.sqrt(Math.min(square + rise, square * largestRise));
  }

  void reset() {
    Arrays.fill(past, 0);
    largestSample.reset();
    before = 0;
    last = 0;
  }
}
