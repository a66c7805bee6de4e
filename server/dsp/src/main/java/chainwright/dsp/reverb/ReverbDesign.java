package chainwright.dsp.reverb;

import chainwright.dsp.signal.DelayLine;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import java.util.Arrays;
import java.util.List;

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

  /** The steps of energy in the shortest line; with fewer they blur what comes back. */
  private static final double STEPS_PER_LINE = 3;

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

  private EarlyReflections early(int channelCount) {
    double mean = lengths().meanFrames();
    return new EarlyReflections(
        channelCount,
        0.15 * mean,
        1.6 * mean,
        EARLY_SHARE,
        TAIL_DB * mean / sampleRateHz / times.middleSeconds());
  }

  /**
   * Returns how much energy of the response to a click is still to come as time goes on: the decay
   * curve of the room, which is also that of a steady sound which stops. It is that of one channel,
   * on the mean over rooms like this one.
   *
   * <p>Source: M. R. Schroeder, "New Method of Measuring Reverberation Time", JASA 37(3), 1965, and
   * ISO 3382-1, integrated impulse response; from memory.
   *
   * @param bands the bands in which it is asked for
   * @param stepSeconds the time from one value to the next [s], above 0
   * @param count the number of values, the first at the time of the click, ≥ 1
   * @return the energy as a multiple of what the click has in the band, [band][value]
   */
  public double[][] energyLeft(List<EnergyBand> bands, double stepSeconds, int count) {
    RoomLengths lengths = lengths();
    int[] lines = lengths.lines();
    double stepFrames = stepSeconds * sampleRateHz;
    double most = Arrays.stream(lines).min().orElseThrow() / STEPS_PER_LINE;
    int finer = (int) Math.ceil(stepFrames / most);
    EnergyFlow flow = new EnergyFlow(stepFrames / finer, (count - 1) * finer + 1);
    int[] all = lengths.diffusions(0);
    double[] before = Diffuser.spread(flow, flow.click(preDelayFrames), new int[] {all[0], all[1]});
    double[] early = new double[flow.steps()];
    early(1).addEnergy(flow, before, early);
    double[] after = Diffuser.spread(flow, before, new int[] {all[2], all[3]});
    FeedbackNetwork.Energy late =
        new FeedbackNetwork.Energy(lines, times, 1 - EARLY_SHARE, sampleRateHz);
    double[][] left = new double[bands.size()][];
    for (int b = 0; b < left.length; b++) {
      left[b] = energyLeft(bands.get(b), flow, finer, early, after, late);
    }
    return left;
  }

  private static double[] energyLeft(
      EnergyBand band,
      EnergyFlow flow,
      int finer,
      double[] early,
      double[] after,
      FeedbackNetwork.Energy late) {
    double[] places = band.places();
    double[] shares = band.shares();
    double[] coming = early.clone();
    double whole = EARLY_SHARE;
    for (int p = 0; p < places.length; p++) {
      double[] kept = late.kept(places[p]);
      whole += shares[p] * late.whole(kept);
      double[] leaving = late.through(flow, after, kept);
      for (int i = 0; i < coming.length; i++) {
        coming[i] += shares[p] * leaving[i];
      }
    }
    double[] left = new double[(coming.length - 1) / finer + 1];
    for (int i = 0; i < coming.length; i++) {
      if (i % finer == 0) {
        left[i / finer] = whole;
      }
      whole -= coming[i];
    }
    return left;
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
      early = design.early(channelCount);
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
