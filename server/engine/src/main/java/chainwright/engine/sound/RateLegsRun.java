package chainwright.engine.sound;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.RateConverter;
import chainwright.dsp.signal.Wiring;
import java.util.ArrayList;
import java.util.List;

/**
 * Changes of sample rate, and what stands behind each, at work on one signal that is handed in
 * block by block. The first frame that comes out is that of the first that goes in, whatever the
 * latency of what is between; into what blocks the signal is cut changes no bit. Nothing is
 * allocated on the way. Not thread-safe.
 */
public final class RateLegsRun {

  private final List<Leg> legs = new ArrayList<>();
  private final int mostFrames;

  /** One leg at work, with room for what comes out of it. */
  private static final class Leg {
    private final RateConverter converter;
    private final Processor processor;
    private final double[][] out;
    private long early;
    private int from;

    Leg(RateLeg design, int channelCount, int mostFrames) {
      converter = design.conversion().newConverter(channelCount);
      processor = design.body().newProcessor(Wiring.ofChannels(channelCount));
      out = new double[channelCount][converter.mostOutputFrames(mostFrames)];
      early = design.body().latencyFrames();
    }

    /** Takes frames; returns how many come out, from {@link #from} on. */
    int process(double[][] in, int at, int count) {
      int given = converter.process(in, at, count, out, 0);
      processor.process(out, 0, given);
      from = (int) Math.min(early, given);
      early -= from;
      return given - from;
    }
  }

  /**
   * Starts.
   *
   * @param designs the legs in order, at least one
   * @param channelCount the number of channels, ≥ 1
   * @param mostFrames the most frames of a block that is handed in
   */
  public RateLegsRun(List<RateLeg> designs, int channelCount, int mostFrames) {
    int most = mostFrames;
    for (RateLeg design : designs) {
      Leg leg = new Leg(design, channelCount, most);
      legs.add(leg);
      most = leg.out[0].length;
    }
    this.mostFrames = most;
  }

  /**
   * Returns how much room a block may need.
   *
   * @return the most frames that come out of a block
   */
  public int mostOutputFrames() {
    return mostFrames;
  }

  /**
   * Converts and processes the next block.
   *
   * @param in the samples, [channel][frame]
   * @param from the first frame of the block
   * @param count how many frames
   * @param out receives what comes out, [channel][frame], from index 0
   * @return how many frames came out, at most {@link #mostOutputFrames}
   */
  public int process(double[][] in, int from, int count, double[][] out) {
    double[][] sound = in;
    int start = from;
    int length = count;
    for (int i = 0; i < legs.size(); i++) {
      Leg leg = legs.get(i);
      length = leg.process(sound, start, length);
      start = leg.from;
      sound = leg.out;
    }
    for (int c = 0; c < out.length; c++) {
      System.arraycopy(sound[c], start, out[c], 0, length);
    }
    return length;
  }
}
