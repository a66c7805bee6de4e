package chainwright.dsp.signal;

/**
 * What only takes time, such as the way to equipment and back, and says so.
 *
 * @param latencyFrames the time [frames], ≥ 0
 */
public record LatencyDesign(int latencyFrames) implements ProcessorDesign {

  /**
   * Checks the time.
   *
   * @param latencyFrames the time [frames]
   * @throws IllegalArgumentException if it is negative
   */
  public LatencyDesign {
    if (latencyFrames < 0) {
      throw new IllegalArgumentException(
          "the latency must not be negative, but was " + latencyFrames);
    }
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new DelayLine(wiring.channelCount(), latencyFrames);
  }
}
