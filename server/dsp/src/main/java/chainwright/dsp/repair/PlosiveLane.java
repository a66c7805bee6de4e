package chainwright.dsp.repair;

import chainwright.dsp.dynamics.SlidingMaximum;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** One channel of a repair of plosives: from a sample to the band below and its gain, in time. */
final class PlosiveLane {

  /** How many means in a row are the low-pass. */
  static final int MEANS = 4;

  /** A thump is what lies by more than this above what is around it: 6 dB; ours. */
  private static final double OVER_AROUND = 2;

  /** A thump is what comes up to this share of the voice's low notes at that time: −3 dB; ours. */
  private static final double OF_VOICE = Math.pow(10, -3 / 20.0);

  /** A thump is what comes up to this share of what lies higher at that time: −18 dB; ours. */
  private static final double OF_HIGH = Math.pow(10, -18 / 20.0);

  /** A thump is what comes up to this share of what was loud of late: −30 dB; ours. */
  private static final double OF_LATE = Math.pow(10, -30 / 20.0);

  /** How fast it is forgotten what was loud [dB/s]; ours. */
  private static final double FORGOTTEN_DB_PER_SECOND = 3;

  /** What counts as loud until something is heard, a voice recorded low: −20 dBFS; ours. */
  private static final double AT_FIRST = 0.1;

  /** Far below any sound, above the subnormal numbers, which are slow: −200 dBFS. */
  private static final double NOTHING = 1e-10;

  private final double least;
  private final double kept;
  private final SlidingMean[] lowPass;
  private final SlidingMean[] thumpPass;
  private final SlidingMean[] voicePass;
  private final Line soundForHigh;
  private final Line voiceForThump;
  private final Line sound;
  private final Line low;
  private final Opening thumpPeaks;
  private final Opening voicePeaks;
  private final Opening highPeaks;
  private final SlidingMaximum spread;
  private final Line thumpForSpread;
  private final Opening around;
  private final Line thumpLevel;
  private final Line atOnce;
  private final SlidingMaximum reduction;
  private final SlidingMean rising;
  private final SlidingMean rounding;
  private double late = AT_FIRST;

  /**
   * Prepares a channel.
   *
   * @param frames the lengths
   * @param least what the low band is multiplied by at least, 0 to 1
   * @param sampleRateHz the sample rate [Hz]
   */
  PlosiveLane(PlosiveFrames frames, double least, double sampleRateHz) {
    this.least = least;
    kept = Math.pow(10, -FORGOTTEN_DB_PER_SECOND / 20 / sampleRateHz);
    lowPass = means(frames.mean());
    thumpPass = means(frames.thumpMean());
    voicePass = means(frames.voiceMean());
    soundForHigh = new Line(frames.thumpLatency());
    voiceForThump = new Line(frames.spread());
    sound = new Line(frames.latency());
    low = new Line(frames.latency() - frames.lowPassLatency());
    thumpPeaks = new Opening(frames.peak());
    voicePeaks = new Opening(frames.peak());
    highPeaks = new Opening(frames.peak());
    spread = new SlidingMaximum(2 * frames.spread() + 1);
    thumpForSpread = new Line(frames.spread());
    around = new Opening(frames.longest());
    thumpLevel = new Line(frames.longest() - 1);
    atOnce = new Line(frames.longest() - 1);
    reduction = new SlidingMaximum(2 * frames.ramp() - 1);
    rising = new SlidingMean(frames.ramp(), 0);
    rounding = new SlidingMean(frames.ramp(), 0);
  }

  private static SlidingMean[] means(int frames) {
    return Stream.generate(() -> new SlidingMean(frames, 0))
        .limit(MEANS)
        .toArray(SlidingMean[]::new);
  }

  private static double through(SlidingMean[] means, double sample) {
    double mean = sample;
    for (SlidingMean one : means) {
      mean = one.next(mean);
    }
    return mean;
  }

  double next(double sample) {
    double below = through(lowPass, sample);
    double thump = through(thumpPass, sample);
    double upToVoice = voiceForThump.next(through(voicePass, sample));
    double voicePeak = level(voicePeaks, upToVoice - thump);
    double highPeak = level(highPeaks, soundForHigh.next(sample) - upToVoice);
    double thumpPeak = thumpForSpread.next(level(thumpPeaks, thump));
    late = Math.max(Math.max(voicePeak, highPeak), Math.max(NOTHING, kept * late));
    // What begins hard is there in the band of thumps a little before it is in the others.
    double beside = spread.next(Math.max(OF_VOICE * voicePeak, OF_HIGH * highPeak));
    double needed = Math.max(atOnce.next(beside), OF_LATE * late);
    double wanted = reduction(thumpLevel.next(thumpPeak), around.next(thumpPeak), needed);
    double share = rounding.next(rising.next(reduction.next(wanted)));
    double delayed = sound.next(sample);
    double delayedLow = low.next(below);
    return share > 0 ? delayed - share * delayedLow : delayed;
  }

  /**
   * The level of peaks: the largest wave, where the next is not further away than a wave is long.
   */
  private static double level(Opening peaks, double wave) {
    return -peaks.next(-Math.abs(wave));
  }

  /**
   * What is taken of the low band, 0 to 1: down to what is around a thump; and for each dB that a
   * thump lies above what it needs, 3 dB, so that what is hardly a thump is hardly lowered.
   */
  private double reduction(double level, double around, double needed) {
    if (level <= needed || level <= OVER_AROUND * around) {
      return 0;
    }
    double ratio = needed / level;
    return 1 - Math.max(least, Math.max(OVER_AROUND * around / level, ratio * ratio * ratio));
  }

  void reset() {
    for (SlidingMean[] means : List.of(lowPass, thumpPass, voicePass)) {
      for (SlidingMean mean : means) {
        mean.reset();
      }
    }
    for (Line line :
        List.of(soundForHigh, voiceForThump, thumpForSpread, sound, low, thumpLevel, atOnce)) {
      line.reset();
    }
    for (Opening opening : List.of(thumpPeaks, voicePeaks, highPeaks, around)) {
      opening.reset();
    }
    spread.reset();
    reduction.reset();
    rising.reset();
    rounding.reset();
    late = AT_FIRST;
  }

  /** Values that wait. */
  private static final class Line {

    private final double[] ring;
    private int at;

    Line(int frames) {
      ring = new double[frames];
    }

    double next(double value) {
      if (ring.length == 0) {
        return value;
      }
      double waited = ring[at];
      ring[at] = value;
      at = at + 1 == ring.length ? 0 : at + 1;
      return waited;
    }

    void reset() {
      Arrays.fill(ring, 0);
      at = 0;
    }
  }
}
