package chainwright.dsp.dynamics;

/**
 * How a level is taken from samples: by their peaks or by their RMS.
 *
 * <p>Both are sine-referenced: a steady sine of amplitude 1.0 reads 0 dB.
 */
public sealed interface Detector permits Detector.Peak, Detector.Rms {

  /**
   * Starts a detector for one channel.
   *
   * @param sampleRateHz the sample rate [Hz], above 0
   * @return a detector in its initial state
   * @throws IllegalArgumentException if the sample rate is not finite and above 0
   */
  LevelDetector newDetector(double sampleRateHz);

  /**
   * The magnitude of each sample, without smoothing of its own.
   *
   * <p>Source: Giannoulis, Massberg and Reiss, "Digital Dynamic Range Compressor Design", JAES
   * 60(6), 2012, the recommended topology: |x| to the gain computer, smoothing after it.
   */
  record Peak() implements Detector {
    @Override
    public LevelDetector newDetector(double sampleRateHz) {
      return LevelDetector.ofPeak(sampleRateHz);
    }
  }

  /**
   * The mean of the squares, weighted exponentially: a one-pole smoothing whose time constant is
   * the window.
   *
   * <p>The mean square is within 1/e of a new value one window after a step. 3.01 dB are added, so
   * that a sine reads its peak.
   *
   * <p>Source: AES17-2020, 3.12 (the full-scale sine as 0 dBFS RMS), as quoted in public
   * transcriptions; the exponential window is common practice.
   *
   * @param windowSeconds the time constant of the mean [s], above 0
   */
  record Rms(double windowSeconds) implements Detector {

    /**
     * Checks the setting.
     *
     * @param windowSeconds the time constant of the mean [s]
     * @throws IllegalArgumentException if the window is not finite and above 0
     */
    public Rms {
      Arguments.requireFinitePositive("the RMS window", windowSeconds);
    }

    @Override
    public LevelDetector newDetector(double sampleRateHz) {
      return LevelDetector.ofRms(windowSeconds, sampleRateHz);
    }
  }
}
