package chainwright.dsp.signal;

/**
 * What stands around a processor that remembers what it heard, so that no sample that is no sound
 * stays in it.
 *
 * <p>A NaN sample comes out as NaN at its own frame, counts as silence and leaves nothing behind;
 * infinities, and what lies beyond ±10¹⁵, count as ±10¹⁵.
 *
 * @param processed what remembers
 */
public record GuardedDesign(ProcessorDesign processed) implements ProcessorDesign {

  @Override
  public int latencyFrames() {
    return processed.latencyFrames();
  }

  @Override
  public int tailFrames() {
    return processed.tailFrames();
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    int channelCount = wiring.channelCount();
    return new Running(
        processed.newProcessor(wiring),
        new DelayLine(channelCount, latencyFrames()),
        new double[channelCount][InTime.CHUNK_FRAMES]);
  }

  private static final class Running implements Processor {

    private final Processor processed;
    private final DelayLine line;

    /** NaN where NaN came in, else 0. */
    private final double[][] marks;

    Running(Processor processed, DelayLine line, double[][] marks) {
      this.processed = processed;
      this.line = line;
      this.marks = marks;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += InTime.CHUNK_FRAMES) {
        int count = Math.min(InTime.CHUNK_FRAMES, to - start);
        for (int c = 0; c < marks.length; c++) {
          NumberGuard.guard(channels[c], start, marks[c], count);
        }
        processed.process(channels, start, start + count);
        line.process(marks, 0, count);
        for (int c = 0; c < marks.length; c++) {
          for (int i = 0; i < count; i++) {
            channels[c][start + i] += marks[c][i];
          }
        }
      }
    }

    @Override
    public void reset() {
      processed.reset();
      line.reset();
    }
  }
}
