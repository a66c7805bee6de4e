package chainwright.dsp.dynamics;

/**
 * A limiter with look-ahead: no sample leaves above its ceiling.
 *
 * <p>The reduction that each peak needs is held for the look-ahead, let go with the release, and
 * averaged over the look-ahead, while the samples wait as long; so the gain has arrived when the
 * peak does. Without look-ahead the gain jumps.
 *
 * <p>Source: common practice, no source; the release is that of Giannoulis, Massberg and Reiss,
 * JAES 60(6), 2012, eq. 7.
 *
 * @param curve the ceiling and its knee
 * @param lookAheadSeconds how long the samples wait [s], in [0, 1]
 * @param releaseSeconds the time constant of a shrinking reduction [s], ≥ 0, finite
 */
public record LimiterDesign(LimiterCurve curve, double lookAheadSeconds, double releaseSeconds) {

  /**
   * Checks the times.
   *
   * @param curve the ceiling and its knee
   * @param lookAheadSeconds how long the samples wait [s]
   * @param releaseSeconds the time constant of a shrinking reduction [s]
   * @throws IllegalArgumentException if a time is outside its range
   */
  public LimiterDesign {
    if (!(lookAheadSeconds >= 0 && lookAheadSeconds <= 1)) {
      throw new IllegalArgumentException(
          "the look-ahead must lie between 0 s and 1 s, but was " + lookAheadSeconds + " s");
    }
    Arguments.requireFiniteNotNegative("the release", releaseSeconds);
  }

  /**
   * Starts a limiter whose channels share one gain.
   *
   * @param sampleRateHz the sample rate [Hz], above 0
   * @param channelCount the number of channels, ≥ 1
   * @return a limiter at no gain reduction
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public Limiter newProcessor(double sampleRateHz, int channelCount) {
    return new Limiter(this, sampleRateHz, channelCount);
  }
}
