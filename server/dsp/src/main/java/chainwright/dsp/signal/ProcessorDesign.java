package chainwright.dsp.signal;

/** What starts processors of one kind with one setting; immutable and thread-safe. */
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
