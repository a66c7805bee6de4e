package chainwright.dsp.loudness;

import java.util.Arrays;

/**
 * The true peak of one channel.
 *
 * <p>Interpolation is left out where it could not change the reading: no phase exceeds the largest
 * sample that it sees by more than the sum of its coefficients' magnitudes.
 */
final class PeakLane {

  /**
   * A place is looked at more finely where the fourfold reading there comes this close to the
   * finest so far: −3 dB. A band-limited signal lies above cos(π/8) of its highest peak, −0.69 dB,
   * at the nearest of the fourfold places (S. Bernstein's inequality; the bound is that of
   * BS.1770-5 Annex 2, attachment 1); the rest is for the ripple of the standard's filter.
   */
  private static final double CANDIDATE = Math.sqrt(0.5);

  private static final int PLACES_PER_PHASE = FineInterpolator.FACTOR / 4;

  /** The fourfold places at index i lie between the samples i − 6 and i − 5. */
  private static final int CENTRE = 6;

  /** How much later than its index a place can be looked at finely. */
  private static final int LAG = FineInterpolator.REACH + 2 - CENTRE;

  private static final int HISTORY = 2 * (FineInterpolator.REACH + 1) + 16;

  /** Interpolated or left out as one. */
  private static final int STRETCH = 64;

  private final boolean isFine;
  private final double[] samples;
  private final double[] fourfold;
  private double annex2;
  private double fine;

  PeakLane(boolean isFine) {
    this.isFine = isFine;
    samples = new double[HISTORY + SampleGuard.LONGEST_PIECE];
    fourfold = new double[HISTORY + SampleGuard.LONGEST_PIECE];
  }

  private PeakLane(PeakLane lane) {
    isFine = lane.isFine;
    samples = lane.samples.clone();
    fourfold = lane.fourfold.clone();
    annex2 = lane.annex2;
    fine = lane.fine;
  }

  /** Takes the next samples, at most {@link SampleGuard#LONGEST_PIECE}. */
  void take(double[] block, int length) {
    System.arraycopy(block, 0, samples, HISTORY, length);
    for (int from = HISTORY; from < HISTORY + length; from += STRETCH) {
      interpolate(from, Math.min(from + STRETCH, HISTORY + length));
    }
    if (isFine) {
      for (int i = HISTORY - LAG; i < HISTORY + length - LAG; i++) {
        double here = fourfold[i];
        if (here > CANDIDATE * fine && here >= fourfold[i - 1] && here >= fourfold[i + 1]) {
          refine(i);
        }
      }
    }
    System.arraycopy(samples, length, samples, 0, HISTORY);
    System.arraycopy(fourfold, length, fourfold, 0, HISTORY);
  }

  private void interpolate(int from, int to) {
    double largest = 0;
    for (int i = from - Annex2Interpolator.REACH; i < to; i++) {
      double magnitude = Math.abs(samples[i]);
      largest = magnitude > largest ? magnitude : largest;
    }
    double enough = isFine ? Math.min(annex2, CANDIDATE * fine) : annex2;
    if (largest * Annex2Interpolator.LARGEST_GAIN <= enough) {
      Arrays.fill(fourfold, from, to, 0);
      return;
    }
    Annex2Interpolator.interpolate(samples, fourfold, from, to);
    for (int i = from; i < to; i++) {
      annex2 = fourfold[i] > annex2 ? fourfold[i] : annex2;
    }
  }

  /** Looks from the fourfold place before the highest to the one after it. */
  private void refine(int index) {
    int centre =
        PLACES_PER_PHASE / 2 + PLACES_PER_PHASE * Annex2Interpolator.largestPhase(samples, index);
    for (int place = centre - PLACES_PER_PHASE; place <= centre + PLACES_PER_PHASE; place++) {
      double magnitude = Math.abs(FineInterpolator.at(samples, index - CENTRE, place));
      fine = magnitude > fine ? magnitude : fine;
    }
  }

  /** Returns a lane that has also seen the silence after the end. */
  PeakLane ended() {
    PeakLane ended = new PeakLane(this);
    ended.take(new double[HISTORY], HISTORY);
    return ended;
  }

  /** Returns the largest magnitude of the standard's fourfold interpolation, ≥ 0. */
  double annex2() {
    return annex2;
  }

  /** Returns the largest magnitude of the interpolation by 32, ≥ 0. */
  double fine() {
    return fine;
  }

  void reset() {
    Arrays.fill(samples, 0);
    Arrays.fill(fourfold, 0);
    annex2 = 0;
    fine = 0;
  }
}
