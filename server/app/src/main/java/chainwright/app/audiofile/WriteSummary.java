package chainwright.app.audiofile;

/**
 * What became of the samples that were written.
 *
 * @param frames how many frames the file holds
 * @param clippedSamples how many samples lay outside what integers hold and became the highest or
 *     lowest; +1.0 is one step above the highest. 0 in floating point
 * @param notNumbers how many samples were NaN and became 0; floating point keeps them
 */
public record WriteSummary(long frames, long clippedSamples, long notNumbers) {}
