package chainwright.dsp.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What runs a processor at a multiple of the rate, so that what it makes above the band is taken
 * away instead of folding back into it.
 *
 * <p>The rate is doubled step by step and halved again, by filters linear in phase. Together they
 * are flat within 0.01 dB to 5/11 of the rate, 20 kHz of 44.1 kHz. Frames between frames are made
 * by a filter that takes away what mirrors that band by 100 dB; the same filter before each halving
 * takes away by 100 dB what would fold back into that band. What the processor makes above half the
 * multiple does fold: that is what a higher factor is for. Between 5/11 and a half of the rate
 * nothing is promised: it is where the filters bend, and at no usual rate is it heard.
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
  private static final int CHUNK_FRAMES = 1024;

  private static final int LARGEST_FACTOR = 32;

  /** The filters of each doubling and of its halving, from the lowest rate on. */
  private static final List<TwofoldFilter> FILTERS = new ArrayList<>();

  static {
    for (int multiple = 1; multiple < LARGEST_FACTOR; multiple *= 2) {
      FILTERS.add(new TwofoldFilter(multiple));
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
      sum += 2 * FILTERS.get(step).latencyFrames() * (factor >> (step + 1));
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
    return new Running(this, processed.newProcessor(wiring), wiring.channelCount());
  }

  private static final class Running implements Processor {

    private final Processor processed;
    private final int steps;
    private final RateRaiser[][] raisers;
    private final RateLowerer[][] lowerers;

    /** The frames at each rate, [step][channel][frame]; the last step is the multiple. */
    private final double[][][] work;

    /** NaN where NaN came in, else 0. */
    private final double[][] marks;

    private final DelayLine marksLine;
    private final int latencyFrames;

    /** For how many frames the line may still hold a mark. */
    private int markedFrames;

    Running(OversamplingDesign design, Processor processed, int channelCount) {
      this.processed = processed;
      steps = design.steps();
      raisers = new RateRaiser[channelCount][steps];
      lowerers = new RateLowerer[channelCount][steps];
      work = new double[steps + 1][channelCount][];
      marks = new double[channelCount][CHUNK_FRAMES];
      latencyFrames = design.latencyFrames();
      marksLine = new DelayLine(channelCount, latencyFrames);
      // What the latency lacks to whole frames.
      int waiting = latencyFrames * design.factor - design.rawLatency();
      for (int c = 0; c < channelCount; c++) {
        for (int step = 0; step < steps; step++) {
          int longest = CHUNK_FRAMES << step;
          raisers[c][step] = new RateRaiser(FILTERS.get(step), longest);
          lowerers[c][step] =
              new RateLowerer(FILTERS.get(step), step == steps - 1 ? waiting : 0, longest);
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
      guard(channels, start, count);
      for (int c = 0; c < raisers.length; c++) {
        for (int step = 0; step < steps; step++) {
          raisers[c][step].process(work[step][c], work[step + 1][c], count << step);
        }
      }
      processed.process(work[steps], 0, count << steps);
      for (int c = 0; c < raisers.length; c++) {
        for (int step = steps - 1; step >= 0; step--) {
          lowerers[c][step].process(work[step + 1][c], work[step][c], count << step);
        }
        System.arraycopy(work[0][c], 0, channels[c], start, count);
      }
      if (markedFrames > 0) {
        markedFrames -= count;
        marksLine.process(marks, 0, count);
        for (int c = 0; c < raisers.length; c++) {
          for (int i = 0; i < count; i++) {
            channels[c][start + i] += marks[c][i];
          }
        }
      }
    }

    private void guard(double[][] channels, int start, int count) {
      boolean isSound = true;
      for (int c = 0; c < marks.length; c++) {
        System.arraycopy(channels[c], start, work[0][c], 0, count);
        isSound &= NumberGuard.isSound(work[0][c], 0, count);
      }
      if (isSound && markedFrames <= 0) {
        return;
      }
      boolean hasNaN = false;
      for (int c = 0; c < marks.length; c++) {
        NumberGuard.guard(work[0][c], 0, marks[c], count);
        for (int i = 0; i < count; i++) {
          hasNaN |= Double.isNaN(marks[c][i]);
        }
      }
      if (hasNaN) {
        markedFrames = count + latencyFrames;
      }
    }

    @Override
    public void reset() {
      processed.reset();
      marksLine.reset();
      markedFrames = 0;
      for (RateRaiser[] ofChannel : raisers) {
        Arrays.stream(ofChannel).forEach(RateRaiser::reset);
      }
      for (RateLowerer[] ofChannel : lowerers) {
        Arrays.stream(ofChannel).forEach(RateLowerer::reset);
      }
    }
  }
}
