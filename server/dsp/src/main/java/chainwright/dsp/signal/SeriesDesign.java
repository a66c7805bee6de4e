package chainwright.dsp.signal;

import java.util.List;

/**
 * Processors one after the other; none is a wire.
 *
 * @param parts the designs in order
 */
public record SeriesDesign(List<ProcessorDesign> parts) implements ProcessorDesign {

  /**
   * Copies the list.
   *
   * @param parts the designs in order
   */
  public SeriesDesign {
    parts = List.copyOf(parts);
  }

  @Override
  public int latencyFrames() {
    return parts.stream().mapToInt(ProcessorDesign::latencyFrames).sum();
  }

  @Override
  public int tailFrames() {
    return parts.stream().mapToInt(ProcessorDesign::tailFrames).sum();
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new Running(
        parts.stream().map(part -> part.newProcessor(wiring)).toArray(Processor[]::new));
  }

  private static final class Running implements Processor {

    private final Processor[] parts;

    Running(Processor[] parts) {
      this.parts = parts;
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (Processor part : parts) {
        part.process(channels, from, to);
      }
    }

    @Override
    public void reset() {
      for (Processor part : parts) {
        part.reset();
      }
    }
  }
}
