package chainwright.dsp.signal;

/**
 * What starts processors of one kind with one setting; immutable and thread-safe.
 *
 * <p><b>Samples that are no numbers.</b> Whoever feeds a processor sees to it that every sample is
 * finite; then so is all that comes out. The takes of a render are repaired where they are read,
 * before any processor. Where NaN or an infinity comes in all the same, the frames before it are as
 * without it, and no channel gets it but those that the processor adds up. Unless the design says
 * otherwise NaN comes out as NaN at its frame and leaves nothing behind; recursive filters keep it,
 * and so does what is made of them. After {@link Processor#reset} every processor is as new.
 */
public interface ProcessorDesign {

  /**
   * Starts a processor.
   *
   * @param wiring how many channels it has and what else it hears
   * @return a processor that has heard silence
   */
  Processor newProcessor(Wiring wiring);

  /**
   * Returns how much later its output is than what is meant, which whoever adds it to other signals
   * has to make up for.
   *
   * @return the latency [frames], ≥ 0
   */
  default int latencyFrames() {
    return 0;
  }

  /**
   * Returns how long its output goes on after its input has ended, until it has fallen by 90 dB.
   *
   * @return the tail without the latency [frames], ≥ 0
   */
  default int tailFrames() {
    return 0;
  }
}
