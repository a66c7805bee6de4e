package chainwright.dsp.signal;

/**
 * What a processor is connected to.
 *
 * @param channelCount the number of channels that it processes, ≥ 1
 * @param keys the other signals that a detector may listen to
 */
public record Wiring(int channelCount, Keys keys) {

  /** The other signals that a detector may listen to, by name. */
  @FunctionalInterface
  public interface Keys {

    /**
     * Finds a signal.
     *
     * @param name the name of a chain or bus
     * @return its sound
     * @throws IllegalArgumentException if there is no such signal
     */
    KeySignal find(String name);
  }

  /** Another signal, on the same time line as the one that is processed. */
  public interface KeySignal {

    /**
     * Returns the number of channels.
     *
     * @return ≥ 1
     */
    int channelCount();

    /**
     * Copies a part of the signal, which must not lie before what was read last.
     *
     * @param startFrame the first frame on the time line; silence before 0 and after the end
     * @param into receives the samples, [channel][frame], from index 0
     * @param count the number of frames
     */
    void read(long startFrame, double[][] into, int count);
  }

  /**
   * Checks the number of channels.
   *
   * @param channelCount the number of channels
   * @param keys the other signals
   * @throws IllegalArgumentException if there is no channel
   */
  public Wiring {
    if (channelCount < 1) {
      throw new IllegalArgumentException(
          "the number of channels must be at least 1, but was " + channelCount);
    }
  }

  /**
   * Connects a processor to its own signal alone.
   *
   * @param channelCount the number of channels, ≥ 1
   * @return the wiring, in which no other signal is found
   */
  public static Wiring ofChannels(int channelCount) {
    return new Wiring(
        channelCount,
        name -> {
          throw new IllegalArgumentException("there is no signal `" + name + "` to listen to");
        });
  }

  /**
   * Returns the same wiring of another number of channels.
   *
   * @param count the number of channels, ≥ 1
   * @return the copy
   */
  public Wiring withChannelCount(int count) {
    return new Wiring(count, keys);
  }
}
