package chainwright.dsp.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What runs a processor at a multiple of the rate, so that what it makes above the band is taken
 * away instead of folding back into it.
 *
 * <p>The rate is doubled step by step and halved again, by filters linear in phase. Together they
 * are flat within 0.01 dB to 0.45 of the rate. Frames between frames are made by a filter that
 * takes away what mirrors that band by 100 dB; before the last halving everything from half the
 * rate on is taken away by 100 dB, so that nothing the processor makes at frequencies between the
 * rate's half and half the multiple folds back louder than that. What it makes above half the
 * multiple does fold: that is what a higher factor is for.
 *
 * <p>Whatever has to be mixed with the processed signal must be mixed within, as part of {@code
 * processed}: there both are equally late and pass through the same filters, so that nothing
 * cancels.
 *
 * <p>A NaN sample comes out as NaN at its own frame, counts as silence and leaves nothing behind;
 * infinities, and what lies beyond ±10¹⁵, count as ±10¹⁵. With a factor of 1 it is the processor as
 * it is.
 *
 * <p>Source of the structure: J. Kahles, F. Esqueda and V. Välimäki, Oversampling for nonlinear
 * waveshaping, JAES 67(6), 2019 (abstract); {@code TwofoldFilter} names that of the filters.
 *
 * @param processed what runs at the multiple of the rate
 * @param factor the multiple: 1, 2, 4, 8, 16 or 32
 */
public record OversamplingDesign(ProcessorDesign processed, int factor) implements ProcessorDesign {

  /** How many frames are worked on at once, so that their multiple stays in the cache. */
  private static final int CHUNK_FRAMES = 512;

  private static final double LARGEST = 1e15;

  private static final int LARGEST_FACTOR = 32;

  /** The filters of each doubling and each halving, from the lowest rate on. */
  private static final List<TwofoldFilter> RAISING = new ArrayList<>();

  private static final List<TwofoldFilter> LOWERING = new ArrayList<>();

  static {
    RAISING.add(TwofoldFilter.between());
    LOWERING.add(TwofoldFilter.before());
    for (int multiple = 2; multiple < LARGEST_FACTOR; multiple *= 2) {
      TwofoldFilter wide = TwofoldFilter.wide(multiple);
      RAISING.add(wide);
      LOWERING.add(wide);
    }
  }

  /**
   * Checks the factor.
   *
   * @param processed what runs at the multiple of the rate
   * @param factor the multiple
   * @throws IllegalArgumentException if the factor is not a power of 2 from 1 to 32
   */
  public OversamplingDesign {
    if (factor < 1 || factor > LARGEST_FACTOR || Integer.bitCount(factor) != 1) {
      throw new IllegalArgumentException(
          "the factor must be 1, 2, 4, 8, 16 or 32, but was " + factor);
    }
  }

  private int steps() {
    return Integer.numberOfTrailingZeros(factor);
  }

  /** The latency without the delay that makes it whole [frames of the multiple]. */
  private int rawLatency() {
    int sum = processed.latencyFrames();
    for (int step = 0; step < steps(); step++) {
      int middles = RAISING.get(step).latencyFrames() + LOWERING.get(step).latencyFrames();
      sum += middles * (factor >> (step + 1));
    }
    return sum;
  }

  @Override
  public int latencyFrames() {
    return (rawLatency() + factor - 1) / factor;
  }

  @Override
  public int tailFrames() {
    return (processed.tailFrames() + factor - 1) / factor + (factor == 1 ? 0 : latencyFrames());
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    if (factor == 1) {
      return processed.newProcessor(wiring);
    }
    int channelCount = wiring.channelCount();
    return new Running(
        processed.newProcessor(wiring),
        new DelayLine(channelCount, latencyFrames() * factor - rawLatency()),
        new DelayLine(channelCount, latencyFrames()),
        steps(),
        channelCount);
  }

  private static final class Running implements Processor {

    private final Processor processed;
    private final DelayLine whole;
    private final DelayLine marksLine;
    private final int steps;
    private final RateRaiser[][] raisers;
    private final RateLowerer[][] lowerers;

    /** The frames at each rate, [step][channel][frame]; the last step is the multiple. */
    private final double[][][] work;

    /** NaN where NaN came in, else 0. */
    private final double[][] marks;

    Running(
        Processor processed, DelayLine whole, DelayLine marksLine, int steps, int channelCount) {
      this.processed = processed;
      this.whole = whole;
      this.marksLine = marksLine;
      this.steps = steps;
      raisers = new RateRaiser[channelCount][steps];
      lowerers = new RateLowerer[channelCount][steps];
      work = new double[steps + 1][channelCount][];
      marks = new double[channelCount][CHUNK_FRAMES];
      for (int c = 0; c < channelCount; c++) {
        for (int step = 0; step < steps; step++) {
          raisers[c][step] = new RateRaiser(RAISING.get(step), CHUNK_FRAMES << step);
          lowerers[c][step] = new RateLowerer(LOWERING.get(step), CHUNK_FRAMES << step);
        }
        for (int step = 0; step <= steps; step++) {
          work[step][c] = new double[CHUNK_FRAMES << step];
        }
      }
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += CHUNK_FRAMES) {
        processChunk(channels, start, Math.min(CHUNK_FRAMES, to - start));
      }
    }

    private void processChunk(double[][] channels, int start, int count) {
      for (int c = 0; c < raisers.length; c++) {
        guard(channels[c], start, work[0][c], marks[c], count);
        for (int step = 0; step < steps; step++) {
          raisers[c][step].process(work[step][c], work[step + 1][c], count << step);
        }
      }
      processed.process(work[steps], 0, count << steps);
      whole.process(work[steps], 0, count << steps);
      marksLine.process(marks, 0, count);
      for (int c = 0; c < raisers.length; c++) {
        for (int step = steps - 1; step >= 0; step--) {
          lowerers[c][step].process(work[step + 1][c], work[step][c], count << step);
        }
        for (int i = 0; i < count; i++) {
          channels[c][start + i] = work[0][c][i] + marks[c][i];
        }
      }
    }

    private static void guard(
        double[] channel, int start, double[] sound, double[] marks, int count) {
      for (int i = 0; i < count; i++) {
        double sample = channel[start + i];
        boolean isNumber = !Double.isNaN(sample);
        marks[i] = isNumber ? 0 : sample;
        sound[i] = isNumber ? Math.max(-LARGEST, Math.min(LARGEST, sample)) : 0;
      }
    }

    @Override
    public void reset() {
      processed.reset();
      whole.reset();
      marksLine.reset();
      for (RateRaiser[] ofChannel : raisers) {
        Arrays.stream(ofChannel).forEach(RateRaiser::reset);
      }
      for (RateLowerer[] ofChannel : lowerers) {
        Arrays.stream(ofChannel).forEach(RateLowerer::reset);
      }
    }
  }
}
