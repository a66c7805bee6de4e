package chainwright.dsp.signal;

import java.util.Arrays;
import java.util.List;

/**
 * Paths side by side, of which each gets the same signal and whose outputs are added, the shorter
 * ones delayed until all are equally late.
 *
 * @param paths the designs, added in this order; at least one
 */
public record SumDesign(List<ProcessorDesign> paths) implements ProcessorDesign {

  /**
   * Copies the list.
   *
   * @param paths the designs
   * @throws IllegalArgumentException if there is none
   */
  public SumDesign {
    if (paths.isEmpty()) {
      throw new IllegalArgumentException("a sum must have at least one path");
    }
    paths = List.copyOf(paths);
  }

  /**
   * Makes a blend of a processed signal and the untouched one.
   *
   * @param processed what processes
   * @param share how much of the processed signal is in the sum, from 0 to 1
   * @return the blend; the design itself if the share is 1
   */
  public static ProcessorDesign ofBlend(ProcessorDesign processed, double share) {
    if (share == 1) {
      return processed;
    }
    return new SumDesign(
        List.of(
            new SeriesDesign(List.of(processed, new FactorDesign(share))),
            new FactorDesign(1 - share)));
  }

  @Override
  public int latencyFrames() {
    return paths.stream().mapToInt(ProcessorDesign::latencyFrames).max().orElse(0);
  }

  @Override
  public int tailFrames() {
    return paths.stream().mapToInt(ProcessorDesign::tailFrames).max().orElse(0);
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    int latest = latencyFrames();
    Processor[] running = new Processor[paths.size()];
    for (int i = 0; i < running.length; i++) {
      ProcessorDesign path = paths.get(i);
      running[i] = InTime.newProcessor(path, latest, wiring);
    }
    return new Running(running, wiring.channelCount());
  }

  private static final class Running implements Processor {

    private final Processor[] paths;
    private final double[][] input;
    private final double[][] work;

    Running(Processor[] paths, int channelCount) {
      this.paths = paths;
      input = new double[channelCount][InTime.CHUNK_FRAMES];
      work = new double[channelCount][InTime.CHUNK_FRAMES];
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int start = from; start < to; start += InTime.CHUNK_FRAMES) {
        int count = Math.min(InTime.CHUNK_FRAMES, to - start);
        for (int c = 0; c < input.length; c++) {
          System.arraycopy(channels[c], start, input[c], 0, count);
          Arrays.fill(channels[c], start, start + count, 0);
        }
        for (Processor path : paths) {
          for (int c = 0; c < input.length; c++) {
            System.arraycopy(input[c], 0, work[c], 0, count);
          }
          path.process(work, 0, count);
          for (int c = 0; c < input.length; c++) {
            for (int i = 0; i < count; i++) {
              channels[c][start + i] += work[c][i];
            }
          }
        }
      }
    }

    @Override
    public void reset() {
      for (Processor path : paths) {
        path.reset();
      }
    }
  }
}
