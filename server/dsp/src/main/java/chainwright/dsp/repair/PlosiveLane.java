package chainwright.dsp.repair;

import chainwright.dsp.dynamics.SlidingMaximum;
import java.util.Arrays;

/** One channel of a repair of plosives: from a sample to the band below and its gain, in time. */
final class PlosiveLane {

  /** How many means in a row are the low-pass. */
  static final int MEANS = 4;

  /** A thump is what lies by more than this above what is around it: 6 dB; ours. */
  private static final double OVER_AROUND = 2;

  private final double least;
  private final SlidingMean[] lowPass = new SlidingMean[MEANS];
  private final Line soundForHigh;
  private final Line sound;
  private final Line low;
  private final Opening lowPeaks;
  private final Opening highPeaks;
  private final Opening around;
  private final Line lowLevel;
  private final Line highLevel;
  private final SlidingMaximum reduction;
  private final SlidingMean rising;
  private final SlidingMean rounding;

  /** Prepares a channel whose low band is multiplied by at least the number given. */
  PlosiveLane(PlosiveFrames frames, double least) {
    this.least = least;
    for (int i = 0; i < MEANS; i++) {
      lowPass[i] = new SlidingMean(frames.mean(), 0);
    }
    soundForHigh = new Line(frames.lowPassLatency());
    sound = new Line(frames.latency());
    low = new Line(frames.latency() - frames.lowPassLatency());
    lowPeaks = new Opening(frames.peak());
    highPeaks = new Opening(frames.peak());
    around = new Opening(frames.longest());
    lowLevel = new Line(frames.longest() - 1);
    highLevel = new Line(frames.longest() - 1);
    reduction = new SlidingMaximum(2 * frames.ramp() - 1);
    rising = new SlidingMean(frames.ramp(), 0);
    rounding = new SlidingMean(frames.ramp(), 0);
  }

  double next(double sample) {
    double below = sample;
    for (SlidingMean mean : lowPass) {
      below = mean.next(below);
    }
    double above = soundForHigh.next(sample) - below;
    double peak = -lowPeaks.next(-Math.abs(below));
    double highPeak = -highPeaks.next(-Math.abs(above));
    double usual = Math.max(OVER_AROUND * around.next(peak), highLevel.next(highPeak));
    double level = lowLevel.next(peak);
    double wanted = level > usual ? 1 - Math.max(least, usual / level) : 0;
    double share = rounding.next(rising.next(reduction.next(wanted)));
    double delayed = sound.next(sample);
    double delayedLow = low.next(below);
    return share > 0 ? delayed - share * delayedLow : delayed;
  }

  void reset() {
    for (SlidingMean mean : lowPass) {
      mean.reset();
    }
    for (Line line : new Line[] {soundForHigh, sound, low, lowLevel, highLevel}) {
      line.reset();
    }
    lowPeaks.reset();
    highPeaks.reset();
    around.reset();
    reduction.reset();
    rising.reset();
    rounding.reset();
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
