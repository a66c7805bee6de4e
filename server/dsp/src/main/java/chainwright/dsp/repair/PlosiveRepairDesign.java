package chainwright.dsp.repair;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.SampleRate;

/**
 * Lowers the thump of a plosive: what rises for a short time in the lowest band, below half of a
 * frequency, where a voice has nothing.
 *
 * <p>A thump lies there more than 6 dB above the level around; above −3 dB against the low notes of
 * the voice, which lie up to one and a half times the frequency; above −18 dB against everything
 * higher; and above −30 dB against the loudest of both of late, which is forgotten by 3 dB a
 * second, so that the rumble of a room is none. At first −20 dBFS count as loud. Then the whole
 * band below the frequency is lowered: to the double of the level around, and by 3 dB for each dB
 * over the other limits, by no more than the reduction.
 *
 * <p>From the sound a share of its low-pass is subtracted, whose phase is linear, four means in a
 * row. So the reduction is reached far below the frequency and at the frequency itself half the
 * share is taken away. Everywhere else the sound passes bit for bit. Levels are those of the peaks
 * within 25 ms, half a period of 20 Hz; what rises for a short time is told by its {@link Opening}.
 * Each channel is repaired on its own. Samples that are no number come out where they came in. The
 * method is ours.
 *
 * @param rate the sample rate
 * @param reductionDb the most that a thump is lowered [dB], 0 to 100
 * @param longestSeconds the longest thump that is lowered [s], above 0, at most 1
 * @param belowHertz the frequency [Hz], from 10 to an eighth of the sample rate
 */
public record PlosiveRepairDesign(
    SampleRate rate, double reductionDb, double longestSeconds, double belowHertz)
    implements ProcessorDesign {

  /** Where (sin πx / πx)⁴ is a half. Source: that equation, solved numerically. */
  private static final double HALF_OF_MEANS = 0.31892;

  private static final double PEAK_SECONDS = 0.025;

  /** Thumps are told below this share of the frequency; ours. */
  private static final double THUMP_SHARE = 0.5;

  /** The low notes of a voice end at this multiple of the frequency; ours. */
  private static final double VOICE_SHARE = 1.5;

  /** Half of what the gain takes to fall and to rise [s]; ours. */
  private static final double RAMP_SECONDS = 0.005;

  /**
   * Checks the numbers.
   *
   * @param rate the sample rate
   * @param reductionDb the most that a thump is lowered [dB]
   * @param longestSeconds the longest thump that is lowered [s]
   * @param belowHertz the frequency [Hz]
   * @throws IllegalArgumentException if a number is outside its range
   */
  public PlosiveRepairDesign {
    if (!(reductionDb >= 0 && reductionDb <= 100)
        || !(longestSeconds > 0 && longestSeconds <= 1)
        || !(belowHertz >= 10 && belowHertz <= rate.hertz() / 8)) {
      throw new IllegalArgumentException(
          "the reduction must lie between 0 and 100 dB, the longest thump above 0 and at most at 1 s,"
              + " the frequency between 10 Hz and an eighth of the sample rate, but were "
              + reductionDb
              + ", "
              + longestSeconds
              + " and "
              + belowHertz);
    }
  }

  @Override
  public int latencyFrames() {
    return frames().latency();
  }

  @Override
  public int tailFrames() {
    return frames().lowPassLatency();
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new StrayDetourDesign(new Unguarded()).newProcessor(wiring);
  }

  private PlosiveFrames frames() {
    int thumpMean = meanOf(THUMP_SHARE * belowHertz);
    // The low-pass makes a thump longer by about half its own length.
    int longest = framesOf(longestSeconds) + PlosiveLane.MEANS / 2 * thumpMean;
    return new PlosiveFrames(
        meanOf(belowHertz),
        thumpMean,
        meanOf(VOICE_SHARE * belowHertz),
        framesOf(PEAK_SECONDS),
        longest,
        framesOf(RAMP_SECONDS));
  }

  private int meanOf(double hertz) {
    return Math.max(2, (int) Math.round(HALF_OF_MEANS * rate.hertz() / hertz));
  }

  private int framesOf(double seconds) {
    return Math.max(1, (int) Math.round(seconds * rate.hertz()));
  }

  private final class Unguarded implements ProcessorDesign {

    @Override
    public int latencyFrames() {
      return PlosiveRepairDesign.this.latencyFrames();
    }

    @Override
    public Processor newProcessor(Wiring wiring) {
      PlosiveLane[] lanes = new PlosiveLane[wiring.channelCount()];
      for (int c = 0; c < lanes.length; c++) {
        lanes[c] = new PlosiveLane(frames(), Math.pow(10, -reductionDb / 20), rate.hertz());
      }
      return new Running(lanes);
    }
  }

  private static final class Running implements Processor {

    private final PlosiveLane[] lanes;

    Running(PlosiveLane[] lanes) {
      this.lanes = lanes;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int c = 0; c < lanes.length; c++) {
        double[] channel = channels[c];
        for (int i = from; i < to; i++) {
          channel[i] = lanes[c].next(channel[i]);
        }
      }
    }

    @Override
    public void reset() {
      for (PlosiveLane lane : lanes) {
        lane.reset();
      }
    }
  }
}
