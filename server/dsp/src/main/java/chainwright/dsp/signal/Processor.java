package chainwright.dsp.signal;

/**
 * Something at work on the channels of one signal, made by {@link ProcessorDesign#newProcessor}.
 *
 * <p>The output is the same, bit for bit, into whatever blocks the signal is cut. Not thread-safe.
 */
public interface Processor {

  /**
   * Processes a block in place, going on where the last block ended.
   *
   * @param channels the samples, [channel][frame], full scale 1.0, as many channels as the
   *     processor was made for; overwritten from {@code from} to before {@code to}
   * @param from the first frame
   * @param to the frame after the last; an empty block changes nothing
   * @throws IndexOutOfBoundsException if the block does not lie within each channel
   */
  void process(double[][] channels, int from, int to);

  /** Returns to the initial state, as when the processor was new. */
  void reset();
}
