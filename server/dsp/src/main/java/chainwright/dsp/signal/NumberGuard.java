package chainwright.dsp.signal;

/**
 * Takes from a signal what would stay in a processor that remembers what it heard: a NaN counts as
 * silence, infinities and what lies beyond ±10¹⁵ count as ±10¹⁵.
 */
public final class NumberGuard {

  /** The largest sample that is let through, either way. */
  public static final double LARGEST = 1e15;

  private NumberGuard() {}

  /**
   * Asks whether a row of samples needs no guard, which is so for nearly all.
   *
   * @param samples the samples
   * @param start the first of them
   * @param count how many
   * @return whether all are numbers of at most ±10¹⁵
   */
  public static boolean isSound(double[] samples, int start, int count) {
    boolean isSound = true;
    for (int i = start; i < start + count; i++) {
      isSound &= Math.abs(samples[i]) <= LARGEST;
    }
    return isSound;
  }

  /**
   * Guards a row of samples in place.
   *
   * @param samples the samples
   * @param start the first of them
   * @param marks receives, from 0, NaN where NaN came in, else 0; to be added to what comes out
   * @param count how many
   */
  public static void guard(double[] samples, int start, double[] marks, int count) {
    for (int i = 0; i < count; i++) {
      double sample = samples[start + i];
      boolean isNumber = !Double.isNaN(sample);
      marks[i] = isNumber ? 0 : sample;
      samples[start + i] = isNumber ? Math.max(-LARGEST, Math.min(LARGEST, sample)) : 0;
    }
  }
}
