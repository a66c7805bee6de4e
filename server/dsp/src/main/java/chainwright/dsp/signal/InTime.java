package chainwright.dsp.signal;

/** What structures with several ways have in common: making all equally late. */
final class InTime {

  /** How many frames a structure works on at once, so that its buffers stay in the cache. */
  static final int CHUNK_FRAMES = 512;

  private InTime() {}

  /** Starts a processor that is late by as much as the latest of its neighbours. */
  static Processor newProcessor(ProcessorDesign design, int latencyFrames, Wiring wiring) {
    Processor processor = design.newProcessor(wiring);
    int missing = latencyFrames - design.latencyFrames();
    return missing == 0
        ? processor
        : new Delayed(processor, new DelayLine(wiring.channelCount(), missing));
  }

  private static final class Delayed implements Processor {

    private final Processor processor;
    private final DelayLine line;

    Delayed(Processor processor, DelayLine line) {
      this.processor = processor;
      this.line = line;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      processor.process(channels, from, to);
      line.process(channels, from, to);
    }

    @Override
    public void reset() {
      processor.reset();
      line.reset();
    }
  }
}
