package chainwright.dsp.reverb;

import chainwright.dsp.signal.DelayLine;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import java.util.Arrays;

/**
 * The sound of a room without the direct sound: after a pre-delay, first reflections and a network
 * of delay lines that all channels feed, each after all-passes of its own.
 *
 * <p>A steady sound of middle frequencies in all channels, alike in power but not in shape, comes
 * back with the power it had. The room is the same every time. The first reflections are not
 * absorbed, so that high frequencies which fall five times as fast as the middle seem to fall less
 * fast at first.
 *
 * <p>Source: {@link FeedbackNetwork}, {@link AbsorbentFilter}, {@link Diffuser} and {@link
 * EarlyReflections} name those of the parts; how they are put together is ours.
 *
 * @param times how long the sound takes to fall by 60 dB
 * @param preDelayFrames the time before it starts [frames], ≥ 0
 * @param sampleRateHz the sample rate [Hz], above 0
 */
public record ReverbDesign(DecayTimes times, int preDelayFrames, double sampleRateHz)
    implements ProcessorDesign {

  /** The share of the power that comes with the first reflections; ours. */
  private static final double EARLY_SHARE = 0.2;

  /** How far a decay is followed [dB]. */
  private static final double TAIL_DB = 90;

  /**
   * Checks the numbers.
   *
   * @param times how long the sound takes to fall by 60 dB
   * @param preDelayFrames the time before it starts [frames]
   * @param sampleRateHz the sample rate [Hz]
   * @throws IllegalArgumentException if a number is outside its range
   */
  public ReverbDesign {
    if (preDelayFrames < 0 || !(sampleRateHz > 0) || Double.isInfinite(sampleRateHz)) {
      throw new IllegalArgumentException(
          "the pre-delay must be at least 0 frames and the sample rate finite and above 0, but were "
              + preDelayFrames
              + " and "
              + sampleRateHz);
    }
  }

  private RoomLengths lengths() {
    return new RoomLengths(times.middleSeconds(), sampleRateHz);
  }

  /** The longest decay, after the way to where it begins. */
  @Override
  public int tailFrames() {
    return preDelayFrames
        + Diffuser.tailFrames(lengths().diffusions(0))
        + FeedbackNetwork.tailFrames(lengths().lines(), times, sampleRateHz);
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new Running(this, wiring.channelCount());
  }

  private static final class Running implements Processor {

    private final DelayLine preDelay;
    private final Diffuser[] before;
    private final Diffuser[] after;
    private final EarlyReflections early;
    private final FeedbackNetwork late;
    private final double[][] work;

    Running(ReverbDesign design, int channelCount) {
      RoomLengths lengths = design.lengths();
      preDelay = new DelayLine(channelCount, design.preDelayFrames());
      before = new Diffuser[channelCount];
      after = new Diffuser[channelCount];
      for (int c = 0; c < channelCount; c++) {
        int[] all = lengths.diffusions(c);
        before[c] = new Diffuser(new int[] {all[0], all[1]});
        after[c] = new Diffuser(new int[] {all[2], all[3]});
      }
      double mean = lengths.meanFrames();
      early =
          new EarlyReflections(
              channelCount,
              0.15 * mean,
              1.6 * mean,
              EARLY_SHARE,
              TAIL_DB * mean / design.sampleRateHz() / design.times().middleSeconds());
      late =
          new FeedbackNetwork(
              channelCount,
              lengths.lines(),
              design.times(),
              1 - EARLY_SHARE,
              design.sampleRateHz());
      work = new double[channelCount][late.pieceFrames()];
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      preDelay.process(channels, from, to);
      for (int start = from; start < to; start += late.pieceFrames()) {
        int count = Math.min(late.pieceFrames(), to - start);
        for (int c = 0; c < work.length; c++) {
          System.arraycopy(channels[c], start, work[c], 0, count);
          Arrays.fill(channels[c], start, start + count, 0);
          before[c].process(work[c], count);
        }
        early.process(work, channels, start, count);
        for (int c = 0; c < work.length; c++) {
          after[c].process(work[c], count);
        }
        late.process(work, channels, start, count);
      }
    }

    @Override
    public void reset() {
      preDelay.reset();
      for (int c = 0; c < work.length; c++) {
        before[c].reset();
        after[c].reset();
      }
      early.reset();
      late.reset();
    }
  }
}
