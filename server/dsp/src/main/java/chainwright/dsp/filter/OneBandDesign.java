package chainwright.dsp.filter;

import chainwright.dsp.signal.DelayLine;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import java.util.List;

/**
 * What processes the band between two crossovers and leaves what lies below and above it as it is:
 * a {@link BandsDesign} of three bands with wires in the outer ones, for two thirds of its work.
 *
 * <p>The three bands add up to both all-pass sums one after the other. So the signal passes those,
 * and what processing changes in the band, its output less its input, is added. NaN or an infinity
 * stays in the crossovers of its channel until they are reset.
 *
 * @param lower the crossover at the lower end
 * @param upper the crossover at the upper end, above it
 * @param processed what processes the band
 */
public record OneBandDesign(Crossover lower, Crossover upper, ProcessorDesign processed)
    implements ProcessorDesign {

  private static final int CHUNK_FRAMES = 512;

  @Override
  public int latencyFrames() {
    return processed.latencyFrames();
  }

  @Override
  public int tailFrames() {
    return Math.max(
        new FilterDesign(sum()).tailFrames() + processed.latencyFrames(),
        new FilterDesign(band()).tailFrames() + processed.tailFrames());
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new Running(this, wiring);
  }

  private FilterCascade sum() {
    return lower.sum().then(upper.sum());
  }

  private FilterCascade band() {
    return lower.high().then(upper.low());
  }

  private static final class Running implements Processor {

    private final CascadeFilter sum;
    private final CascadeFilter band;
    private final Processor processed;
    private final DelayLine waitingSum;
    private final DelayLine waitingBand;
    private final double[][] before;
    private final double[][] after;

    Running(OneBandDesign design, Wiring wiring) {
      int channelCount = wiring.channelCount();
      sum = new CascadeFilter(design.sum(), channelCount);
      band = new CascadeFilter(design.band(), channelCount);
      processed = design.processed.newProcessor(wiring);
      waitingSum = new DelayLine(channelCount, design.latencyFrames());
      waitingBand = new DelayLine(channelCount, design.latencyFrames());
      before = new double[channelCount][CHUNK_FRAMES];
      after = new double[channelCount][CHUNK_FRAMES];
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += CHUNK_FRAMES) {
        processChunk(channels, start, Math.min(CHUNK_FRAMES, to - start));
      }
    }

    private void processChunk(double[][] channels, int start, int count) {
      copy(channels, start, before, count);
      band.process(before, 0, count);
      copy(before, 0, after, count);
      processed.process(after, 0, count);
      waitingBand.process(before, 0, count);
      sum.process(channels, start, start + count);
      waitingSum.process(channels, start, start + count);
      for (int c = 0; c < before.length; c++) {
        double[] channel = channels[c];
        double[] input = before[c];
        double[] output = after[c];
        for (int i = 0; i < count; i++) {
          channel[start + i] += output[i] - input[i];
        }
      }
    }

    private static void copy(double[][] from, int start, double[][] to, int count) {
      for (int c = 0; c < to.length; c++) {
        System.arraycopy(from[c], start, to[c], 0, count);
      }
    }

    @Override
    public void reset() {
      for (Processor part : List.of(sum, band, processed, waitingSum, waitingBand)) {
        part.reset();
      }
    }
  }
}
