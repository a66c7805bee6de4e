package chainwright.dsp.signal;

/**
 * A processor that is heard only during a passage of the signal, with a soft change at both ends.
 *
 * <p>It runs all the time, so that it has settled when it is first heard. The change is a raised
 * cosine between the untouched signal, equally late, and the processed one, which have the sum 1:
 * both are mostly alike, so that equal gain, not equal power, keeps the level. The change lies
 * within the passage.
 *
 * @param processed what is heard during the passage
 * @param start the first frame of the passage, in the signal that enters this processor
 * @param end the frame after the last
 * @param fadeFrames the length of either change [frames], ≥ 0; at most half the passage is used
 */
public record PassageDesign(ProcessorDesign processed, long start, long end, int fadeFrames)
    implements ProcessorDesign {

  /**
   * Checks the numbers.
   *
   * @param processed what is heard
   * @param start the first frame
   * @param end the frame after the last
   * @param fadeFrames the length of either change [frames]
   * @throws IllegalArgumentException if the passage ends before it starts, or the change is
   *     negative
   */
  public PassageDesign {
    if (end < start || fadeFrames < 0) {
      throw new IllegalArgumentException(
          "a passage must not end before it starts nor change in less than 0 frames, but went from "
              + start
              + " to "
              + end
              + " with "
              + fadeFrames);
    }
  }

  @Override
  public int latencyFrames() {
    return processed.latencyFrames();
  }

  @Override
  public int tailFrames() {
    return 0;
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new Running(
        processed.newProcessor(wiring),
        new DelayLine(wiring.channelCount(), latencyFrames()),
        wiring.channelCount());
  }

  /** Returns the share of the processed signal at a frame of the input's time. */
  private double share(long frame) {
    if (frame < start || frame >= end) {
      return 0;
    }
    double fade = Math.min(fadeFrames, (end - start) / 2.0);
    double inside = Math.min(frame - start + 0.5, end - frame - 0.5);
    return inside >= fade ? 1 : (1 - Math.cos(Math.PI * inside / fade)) / 2;
  }

  private final class Running implements Processor {

    private final Processor wet;
    private final DelayLine dry;
    private final double[][] work;
    private long frame;

    Running(Processor wet, DelayLine dry, int channelCount) {
      this.wet = wet;
      this.dry = dry;
      work = new double[channelCount][InTime.CHUNK_FRAMES];
      frame = -latencyFrames();
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int begin = from; begin < to; begin += InTime.CHUNK_FRAMES) {
        int count = Math.min(InTime.CHUNK_FRAMES, to - begin);
        for (int c = 0; c < work.length; c++) {
          System.arraycopy(channels[c], begin, work[c], 0, count);
        }
        wet.process(work, 0, count);
        dry.process(channels, begin, begin + count);
        if (frame + count > start && frame < end) {
          blend(channels, begin, count);
        }
        frame += count;
      }
    }

    private void blend(double[][] channels, int begin, int count) {
      for (int i = 0; i < count; i++) {
        double share = share(frame + i);
        if (share != 0) {
          for (int c = 0; c < work.length; c++) {
            double untouched = channels[c][begin + i];
            channels[c][begin + i] =
                share == 1 ? work[c][i] : untouched + share * (work[c][i] - untouched);
          }
        }
      }
    }

    @Override
    public void reset() {
      wet.reset();
      dry.reset();
      frame = -latencyFrames();
    }
  }
}
