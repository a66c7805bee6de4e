package chainwright.engine.mix;

/**
 * What a stage of dynamics got and did, over windows of {@value StageMeter#WINDOW_MILLIS} ms. A
 * window is active if its level lies above {@value StageMeter#ACTIVE_DBFS} dBFS; both figures are
 * ours, no source.
 *
 * @param averageDbfs the level that came in, all active windows together, all channels alike
 *     [dBFS], sine-referenced; negative infinity if none is active
 * @param peakDbfs the highest sample that came in [dBFS]; negative infinity for silence
 * @param usualReductionDb the gain reduction that 95 % of the active windows lie below [dB],
 *     make-up gain not counted; 0 if none is active
 * @param mostReductionDb the greatest gain reduction of an active window [dB]
 */
public record StageReading(
    double averageDbfs, double peakDbfs, double usualReductionDb, double mostReductionDb) {}
