package chainwright.dsp.reverb;

import java.util.stream.DoubleStream;

/**
 * What a way of some length takes from the sound: a factor and two first-order shelves whose gains
 * in dB grow with the length, so that all ways together fall by 60 dB in the times wanted.
 *
 * <p>Source: J.-M. Jot and A. Chaigne, "Digital Delay Networks for Designing Artificial
 * Reverberators", AES 90th Convention, 1991, preprint 3030, and J.-M. Jot, "An Analysis/Synthesis
 * Approach to Real-Time Artificial Reverberation", ICASSP 1992: the gain in dB at each frequency is
 * −60 times the length over the reverberation time; both from memory. The shelves are (s + ω √g) /
 * (s + ω / √g), half of whose gain in dB lies at ω, by the bilinear transform.
 */
final class AbsorbentFilter {

  /** A decay must not end in denormal numbers, which are slow. */
  private static final double NOTHING = 1e-30;

  /** The highest frequency that is looked at, as a share of the rate. */
  private static final double HIGHEST_SHARE = 0.45;

  /** How much of a fault is mended at once. */
  private static final double MENDED_SHARE = 0.8;

  /** How often the gains are mended. */
  private static final int MENDINGS = 20;

  /** The cosines of the angles from frame to frame at which no gain may be. */
  private static final double[] COSINES =
      DoubleStream.iterate(1e-4, share -> share < 0.5, share -> share * 1.3)
          .map(share -> Math.cos(2 * Math.PI * share))
          .toArray();

  private final Shelves shelves;
  private double low;
  private double high;

  /**
   * Makes a filter that has heard silence.
   *
   * @param times how long a sound takes to fall by 60 dB
   * @param frames the length of the way [frames], above 0
   * @param sampleRateHz the sample rate [Hz]
   */
  AbsorbentFilter(DecayTimes times, int frames, double sampleRateHz) {
    DecayTimes.Course wanted =
        new DecayTimes.Course(0, 0, 0).plus(times.dbPerSecond(), -frames / sampleRateHz);
    shelves = mended(wanted, sampleRateHz);
  }

  /**
   * Large gains of a shelf reach further than small ones, so the three gains that are set are
   * mended as long as the three frequencies that are stated come closer.
   */
  private static Shelves mended(DecayTimes.Course wanted, double sampleRateHz) {
    DecayTimes.Course set = wanted;
    Shelves best = Shelves.of(set, sampleRateHz);
    double least = Double.POSITIVE_INFINITY;
    for (int round = 0; round < MENDINGS; round++) {
      Shelves tried = Shelves.of(set, sampleRateHz);
      double bass = fault(tried, wanted, DecayTimes.BASS_HZ, sampleRateHz);
      double middle = fault(tried, wanted, DecayTimes.MIDDLE_HZ, sampleRateHz);
      double treble = fault(tried, wanted, DecayTimes.TREBLE_HZ, sampleRateHz);
      double most = Math.max(Math.abs(bass), Math.max(Math.abs(middle), Math.abs(treble)));
      if (most >= least || tried.highestPower() >= 1) {
        return best;
      }
      least = most;
      best = tried;
      set = set.plus(DecayTimes.Course.through(bass, middle, treble), -MENDED_SHARE);
    }
    return best;
  }

  /** How far a filter is above what is wanted [dB]; at a low rate, below half of it. */
  private static double fault(
      Shelves tried, DecayTimes.Course wanted, double hertz, double sampleRateHz) {
    double at = Math.min(hertz, HIGHEST_SHARE * sampleRateHz);
    return tried.gainDb(at, sampleRateHz) - wanted.at(at);
  }

  /** The factor and the coefficients of both shelves, (1 + ahead z⁻¹) / (1 + back z⁻¹). */
  private record Shelves(
      double factor, double lowAhead, double lowBack, double highAhead, double highBack) {

    static Shelves of(DecayTimes.Course gainsDb, double sampleRateHz) {
      double lowRoot = Math.pow(10, gainsDb.low() / 40);
      double highRoot = Math.pow(10, gainsDb.high() / 40);
      // (s + w r) / (s + w / r) and r² (s + w / r) / (s + w r), with s = (1 - z⁻¹) / (1 + z⁻¹).
      double lowAngle = warped(DecayTimes.LOW_SHELF_HZ, sampleRateHz);
      double highAngle = warped(DecayTimes.HIGH_SHELF_HZ, sampleRateHz);
      double lowZero = lowAngle * lowRoot;
      double lowPole = lowAngle / lowRoot;
      double highZero = highAngle / highRoot;
      double highPole = highAngle * highRoot;
      double factor =
          Math.pow(10, gainsDb.flat() / 20)
              * ((1 + lowZero) / (1 + lowPole))
              * (highRoot * highRoot * (1 + highZero) / (1 + highPole));
      return new Shelves(
          factor,
          (lowZero - 1) / (lowZero + 1),
          (lowPole - 1) / (lowPole + 1),
          (highZero - 1) / (highZero + 1),
          (highPole - 1) / (highPole + 1));
    }

    /** At a low rate a shelf may lie where there is nothing left; it stays below half the rate. */
    private static double warped(double hertz, double sampleRateHz) {
      return Math.tan(Math.PI * Math.min(hertz / sampleRateHz, HIGHEST_SHARE));
    }

    double gainDb(double hertz, double sampleRateHz) {
      return 10 * Math.log10(power(Math.cos(2 * Math.PI * hertz / sampleRateHz)));
    }

    double highestPower() {
      double highest = 0;
      for (double cosine : COSINES) {
        highest = Math.max(highest, power(cosine));
      }
      return highest;
    }

    /** What is left of the power of a sine, by the cosine of its angle from frame to frame. */
    double power(double cosine) {
      return factor
          * factor
          * (square(lowAhead, cosine) / square(lowBack, cosine))
          * (square(highAhead, cosine) / square(highBack, cosine));
    }

    /** The square of |1 + c z⁻¹|. */
    private static double square(double coefficient, double cosine) {
      return 1 + coefficient * (coefficient + 2 * cosine);
    }
  }

  /** Returns what is left of the power of a steady sound, by its angle's cosine. */
  double power(double cosine) {
    return shelves.power(cosine);
  }

  /** Returns the gain of a steady sound [dB]. */
  double gainDb(double hertz, double sampleRateHz) {
    return shelves.gainDb(hertz, sampleRateHz);
  }

  /** Filters the first samples of an array in place. */
  void process(double[] samples, int count) {
    double lowState = low;
    double highState = high;
    double factor = shelves.factor();
    double lowAhead = shelves.lowAhead();
    double lowBack = shelves.lowBack();
    double highAhead = shelves.highAhead();
    double highBack = shelves.highBack();
    for (int i = 0; i < count; i++) {
      double sample = factor * samples[i];
      double middle = sample + lowState;
      lowState = lowAhead * sample - lowBack * middle;
      double out = middle + highState;
      highState = highAhead * middle - highBack * out;
      if (Math.abs(out) < NOTHING && Math.abs(lowState) + Math.abs(highState) < NOTHING) {
        out = 0;
        lowState = 0;
        highState = 0;
      }
      samples[i] = out;
    }
    low = lowState;
    high = highState;
  }

  void reset() {
    low = 0;
    high = 0;
  }
}
