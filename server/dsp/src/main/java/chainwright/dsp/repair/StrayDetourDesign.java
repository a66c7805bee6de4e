package chainwright.dsp.repair;

import chainwright.dsp.signal.DelayLine;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;

/**
 * Leads round a processor what it cannot reckon with: samples that are no number, infinite, or
 * larger than {@value #LARGEST}.
 *
 * <p>The processor hears 0 in their place; they come out as they came in, as late as everything
 * else, and leave nothing behind but what the processor makes of the 0.
 *
 * @param guarded the processor's design
 */
record StrayDetourDesign(ProcessorDesign guarded) implements ProcessorDesign {

  /** Far above any signal; the power of a long frame of such samples is still a number. */
  private static final double LARGEST = 1e60;

  /** How many frames are looked at at once. */
  private static final int CHUNK_FRAMES = 512;

  @Override
  public int latencyFrames() {
    return guarded.latencyFrames();
  }

  @Override
  public int tailFrames() {
    return guarded.tailFrames();
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new Running(
        guarded.newProcessor(wiring),
        new DelayLine(wiring.channelCount(), latencyFrames()),
        wiring.channelCount());
  }

  private static final class Running implements Processor {

    private final Processor inner;
    private final DelayLine round;
    private final double[][] strays;

    Running(Processor inner, DelayLine round, int channelCount) {
      this.inner = inner;
      this.round = round;
      strays = new double[channelCount][CHUNK_FRAMES];
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += CHUNK_FRAMES) {
        int count = Math.min(CHUNK_FRAMES, to - start);
        for (int c = 0; c < strays.length; c++) {
          for (int i = 0; i < count; i++) {
            double sample = channels[c][start + i];
            boolean isUsual = Math.abs(sample) <= LARGEST;
            strays[c][i] = isUsual ? 0 : sample;
            channels[c][start + i] = isUsual ? sample : 0;
          }
        }
        inner.process(channels, start, start + count);
        round.process(strays, 0, count);
        for (int c = 0; c < strays.length; c++) {
          for (int i = 0; i < count; i++) {
            if (strays[c][i] != 0) {
              channels[c][start + i] = strays[c][i];
            }
          }
        }
      }
    }

    @Override
    public void reset() {
      inner.reset();
      round.reset();
    }
  }
}
