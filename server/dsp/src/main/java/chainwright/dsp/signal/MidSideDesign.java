package chainwright.dsp.signal;

/**
 * A stereo signal taken apart into what both channels share and what differs, each processed on its
 * own and put together again.
 *
 * <p>Mid is {@code (left + right) / 2} and side {@code (left - right) / 2}. A signal of one channel
 * is all mid; of more than two, the channels from the third on pass, equally late.
 *
 * @param mid what processes the middle, of one channel
 * @param side what processes the side, of one channel
 */
public record MidSideDesign(ProcessorDesign mid, ProcessorDesign side) implements ProcessorDesign {

  @Override
  public int latencyFrames() {
    return Math.max(mid.latencyFrames(), side.latencyFrames());
  }

  @Override
  public int tailFrames() {
    return Math.max(mid.tailFrames(), side.tailFrames());
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    int latest = latencyFrames();
    Wiring one = wiring.withChannelCount(1);
    Processor ofMid = InTime.newProcessor(mid, latest, one);
    return wiring.channelCount() == 1
        ? ofMid
        : new Running(
            ofMid,
            InTime.newProcessor(side, latest, one),
            new DelayLine(wiring.channelCount(), latest));
  }

  private static final class Running implements Processor {

    private final Processor mid;
    private final Processor side;
    private final DelayLine others;
    private final double[][] middle = new double[1][InTime.CHUNK_FRAMES];
    private final double[][] difference = new double[1][InTime.CHUNK_FRAMES];

    Running(Processor mid, Processor side, DelayLine others) {
      this.mid = mid;
      this.side = side;
      this.others = others;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += InTime.CHUNK_FRAMES) {
        int count = Math.min(InTime.CHUNK_FRAMES, to - start);
        double[] left = channels[0];
        double[] right = channels[1];
        for (int i = 0; i < count; i++) {
          middle[0][i] = (left[start + i] + right[start + i]) / 2;
          difference[0][i] = (left[start + i] - right[start + i]) / 2;
        }
        mid.process(middle, 0, count);
        side.process(difference, 0, count);
        others.process(channels, start, start + count);
        for (int i = 0; i < count; i++) {
          left[start + i] = middle[0][i] + difference[0][i];
          right[start + i] = middle[0][i] - difference[0][i];
        }
      }
    }

    @Override
    public void reset() {
      mid.reset();
      side.reset();
      others.reset();
    }
  }
}
