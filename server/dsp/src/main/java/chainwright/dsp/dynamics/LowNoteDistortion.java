package chainwright.dsp.dynamics;

import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.DoublePredicate;

/**
 * The distortion that the moving gain of a compressor gives to a steady low note, such as 1.1 % THD
 * at 50 Hz with 2 ms and 40 ms.
 *
 * <p>A sine is run through the compressor's own detector, curve and smoother until it repeats
 * exactly, and the harmonics of one period are measured. When attack and release are both short
 * against the period, the gain follows the wave and bends it. The result depends on nothing but the
 * arguments, and is the same for all notes where times are in proportion to the period.
 *
 * <p>Source: the model is that of Giannoulis, Massberg and Reiss, "Digital Dynamic Range Compressor
 * Design", JAES 60(6), 2012; THD after IEC 60268-3, 14.12 (harmonics relative to the fundamental),
 * as quoted in public transcriptions.
 *
 * @param thdShare all harmonics, root of the sum of squares, relative to the fundamental (THD_F), ≥
 *     0; 0.01 is 1 %
 * @param thirdHarmonicShare the third harmonic relative to the fundamental, ≥ 0
 * @param rippleDb the gain's peak-to-peak movement within a period [dB], ≥ 0
 * @param meanReductionDb the gain reduction averaged over the period [dB]
 */
public record LowNoteDistortion(
    double thdShare, double thirdHarmonicShare, double rippleDb, double meanReductionDb) {

  /** How far above the threshold the note is taken to lie [dB] where nothing is known: 6. */
  public static final double DEFAULT_OVERSHOOT_DB = 6;

  private static final double SHORTEST_PERIODS = 0.001;
  private static final double LONGEST_PERIODS = 100;
  private static final double SEARCH_RATIO = 1.01;

  /**
   * Returns the distortion of a note that peaks 6 dB above the curve's threshold.
   *
   * @param design the compressor
   * @param noteHz the fundamental [Hz], finite, above 0
   * @return the distortion
   * @throws IllegalArgumentException if the note is not finite and above 0
   */
  public static LowNoteDistortion analyze(CompressorDesign design, double noteHz) {
    return analyze(design, noteHz, design.curve().thresholdDb() + DEFAULT_OVERSHOOT_DB);
  }

  /**
   * Returns the distortion of a note of this level.
   *
   * @param design the compressor
   * @param noteHz the fundamental [Hz], finite, above 0
   * @param levelDb the peak level of the sine [dB re full scale], finite
   * @return the distortion
   * @throws IllegalArgumentException if a number is outside its range
   */
  public static LowNoteDistortion analyze(CompressorDesign design, double noteHz, double levelDb) {
    Arguments.requireFinitePositive("the note", noteHz);
    Arguments.requireFinite("the level", levelDb);
    int halfPeriod = SteadySine.halfPeriodSamples(design.ballistics().attackSeconds() * noteHz);
    double[] reductionDb =
        SteadySine.reductionDb(design, 2 * halfPeriod * noteHz, levelDb, halfPeriod);
    return measure(reductionDb);
  }

  /**
   * Returns the smallest attack that keeps the distortion within a limit, all else unchanged.
   *
   * @param design the compressor
   * @param noteHz the fundamental [Hz], finite, above 0
   * @param levelDb the peak level of the sine [dB re full scale], finite
   * @param thdLimitShare the most distortion (THD_F), above 0; 0.003 is 0.3 %
   * @return the attack [s], from a thousandth of a period up and to 1 %, always within the limit;
   *     empty if not even 100 periods will do
   * @throws IllegalArgumentException if a number is outside its range
   */
  public static OptionalDouble smallestAttackSeconds(
      CompressorDesign design, double noteHz, double levelDb, double thdLimitShare) {
    return smallest(design, design.ballistics()::withAttack, noteHz, levelDb, thdLimitShare);
  }

  /**
   * Returns the smallest release that keeps the distortion within a limit, all else unchanged.
   *
   * @param design the compressor; of a two-stage release the fast stage is sought
   * @param noteHz the fundamental [Hz], finite, above 0
   * @param levelDb the peak level of the sine [dB re full scale], finite
   * @param thdLimitShare the most distortion (THD_F), above 0; 0.003 is 0.3 %
   * @return the release [s], from a thousandth of a period up and to 1 %, always within the limit;
   *     empty if not even 100 periods will do
   * @throws IllegalArgumentException if a number is outside its range
   */
  public static OptionalDouble smallestReleaseSeconds(
      CompressorDesign design, double noteHz, double levelDb, double thdLimitShare) {
    return smallest(design, design.ballistics()::withRelease, noteHz, levelDb, thdLimitShare);
  }

  /** Halves the interval, by ratio; the distortion falls as either time grows. */
  private static OptionalDouble smallest(
      CompressorDesign design,
      DoubleFunction<Ballistics> ofSeconds,
      double noteHz,
      double levelDb,
      double thdLimitShare) {
    Arguments.requireFinitePositive("the note", noteHz);
    Arguments.requireFinitePositive("the limit", thdLimitShare);
    double tooShort = SHORTEST_PERIODS / noteHz;
    double longEnough = LONGEST_PERIODS / noteHz;
    DoublePredicate clears =
        seconds ->
            analyze(design.withBallistics(ofSeconds.apply(seconds)), noteHz, levelDb).thdShare()
                <= thdLimitShare;
    if (!clears.test(longEnough)) {
      return OptionalDouble.empty();
    }
    if (clears.test(tooShort)) {
      return OptionalDouble.of(tooShort);
    }
    while (longEnough > SEARCH_RATIO * tooShort) {
      double middle = Math.sqrt(tooShort * longEnough);
      if (clears.test(middle)) {
        longEnough = middle;
      } else {
        tooShort = middle;
      }
    }
    return OptionalDouble.of(longEnough);
  }

  /**
   * Measures half a period; the other half is the same with its sign turned, for the gain follows
   * the magnitude, so there are odd harmonics only.
   */
  private static LowNoteDistortion measure(double[] reductionDb) {
    int length = reductionDb.length;
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    double sum = 0;
    for (double reduction : reductionDb) {
      least = Math.min(least, reduction);
      most = Math.max(most, reduction);
      sum += reduction;
    }
    // The mean gain changes no ratio; leaving it out keeps the numbers near 1.
    double mean = sum / length;
    double[] wave = new double[length];
    double sine = 0;
    double cosine = 0;
    double sine3 = 0;
    double cosine3 = 0;
    for (int i = 0; i < length; i++) {
      double s = SteadySine.sine(i, length);
      double c = SteadySine.cosine(i, length);
      wave[i] = s * Gains.toFactor(mean - reductionDb[i]);
      sine += wave[i] * s;
      cosine += wave[i] * c;
      // sin 3φ = s (3 − 4 s²), cos 3φ = c (4 c² − 3).
      sine3 += wave[i] * s * (3 - 4 * s * s);
      cosine3 += wave[i] * c * (4 * c * c - 3);
    }
    double toAmplitude = 2.0 / length;
    sine *= toAmplitude;
    cosine *= toAmplitude;
    double residue = 0;
    for (int i = 0; i < length; i++) {
      // Taking the fundamental away sample by sample keeps small distortion exact.
      double rest =
          wave[i] - sine * SteadySine.sine(i, length) - cosine * SteadySine.cosine(i, length);
      residue += rest * rest;
    }
    double fundamental = Math.hypot(sine, cosine);
    double thd = Math.sqrt(residue * toAmplitude) / fundamental;
    double third = Math.hypot(sine3, cosine3) * toAmplitude / fundamental;
    return new LowNoteDistortion(thd, third, most - least, mean);
  }
}
