package chainwright.engine.mix;

import chainwright.dsp.signal.DelayLine;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;

/** A design whose processor is listened to; the meter hears the one that was started last. */
record MeteredDesign(ProcessorDesign design, StageMeter meter) implements ProcessorDesign {

  private static final int CHUNK_FRAMES = 512;

  @Override
  public int latencyFrames() {
    return design.latencyFrames();
  }

  @Override
  public int tailFrames() {
    return design.tailFrames();
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    meter.restart();
    return new Running(
        design.newProcessor(wiring),
        meter,
        new DelayLine(wiring.channelCount(), design.latencyFrames()),
        wiring.channelCount());
  }

  private static final class Running implements Processor {

    private final Processor processor;
    private final StageMeter meter;
    private final DelayLine line;
    private final double[][] before;

    Running(Processor processor, StageMeter meter, DelayLine line, int channelCount) {
      this.processor = processor;
      this.meter = meter;
      this.line = line;
      before = new double[channelCount][CHUNK_FRAMES];
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += CHUNK_FRAMES) {
        int count = Math.min(CHUNK_FRAMES, to - start);
        for (int c = 0; c < before.length; c++) {
          System.arraycopy(channels[c], start, before[c], 0, count);
        }
        line.process(before, 0, count);
        processor.process(channels, start, start + count);
        meter.process(before, channels, start, count);
      }
    }

    @Override
    public void reset() {
      processor.reset();
      line.reset();
      meter.restart();
    }
  }
}
