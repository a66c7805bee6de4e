package chainwright.dsp.loudness;

/**
 * Where a channel stays at full scale for three samples or more, as it does when something cut its
 * peaks. A tone so low that it moves by less than a step of the word length from sample to sample
 * can do that by itself. What was cut and then turned down is not seen. Three is common practice,
 * no source.
 *
 * @param count how many such runs there are
 * @param sampleCount how many samples they have together
 * @param longestSamples how many the longest has; 0 if there is none
 * @param firstFrame where the first begins [samples from the start]; −1 if there is none
 */
public record ClippedRuns(long count, long sampleCount, long longestSamples, long firstFrame) {

  /** The shortest run that counts [samples]. */
  public static final int SHORTEST = 3;

  /** No run at all. */
  public static final ClippedRuns NONE = new ClippedRuns(0, 0, 0, -1);
}
