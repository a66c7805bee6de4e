package chainwright.dsp.dynamics;

/**
 * A feed-forward compressor in the log domain, such as 4:1 above −24 dB at 5 ms and 80 ms.
 *
 * <p>Level detector, gain computer, then attack and release on the reduction in dB. With other
 * curves it is a limiter without look-ahead, the gain of a de-esser or that of a dynamic band.
 *
 * <p>Source: Giannoulis, Massberg and Reiss, "Digital Dynamic Range Compressor Design", JAES 60(6),
 * 2012, the recommended topology.
 *
 * @param curve the static curve
 * @param detector how the level is taken
 * @param ballistics attack and release
 */
public record CompressorDesign(OverThresholdCurve curve, Detector detector, Ballistics ballistics)
    implements GainControl {

  @Override
  public Compressor newProcessor(double sampleRateHz) {
    return new Compressor(this, sampleRateHz);
  }

  /**
   * Returns the same compressor with other times.
   *
   * @param newBallistics attack and release
   * @return the new design
   */
  public CompressorDesign withBallistics(Ballistics newBallistics) {
    return new CompressorDesign(curve, detector, newBallistics);
  }
}
