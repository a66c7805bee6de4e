package chainwright.dsp.dynamics;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import java.util.Optional;

/**
 * What a detector listens to.
 *
 * @param signal the name of another signal; empty for the signal that is processed
 * @param latencyFrames how late the processed signal is when it arrives [frames], ≥ 0; another
 *     signal is read as much earlier, so that both belong together
 * @param filter what the signal passes on its way; empty if nothing
 */
public record KeyInput(
    Optional<String> signal, int latencyFrames, Optional<ProcessorDesign> filter) {

  /** The processed signal as it is. */
  public static final KeyInput OWN = new KeyInput(Optional.empty(), 0, Optional.empty());

  /** How many frames are worked on at once. */
  static final int CHUNK_FRAMES = 512;

  /**
   * Makes the processed signal, filtered.
   *
   * @param filter what it passes on its way to the detector
   * @return the input
   */
  public static KeyInput ofFilter(ProcessorDesign filter) {
    return new KeyInput(Optional.empty(), 0, Optional.of(filter));
  }

  Running start(Wiring wiring) {
    Optional<Wiring.KeySignal> other = signal.map(name -> wiring.keys().find(name));
    int channelCount = other.map(Wiring.KeySignal::channelCount).orElse(wiring.channelCount());
    return new Running(
        other,
        filter.map(design -> design.newProcessor(wiring.withChannelCount(channelCount))),
        channelCount,
        -latencyFrames);
  }

  /** The key of a running processor, chunk by chunk. */
  static final class Running {

    private final Optional<Wiring.KeySignal> other;
    private final Optional<Processor> filter;
    private final long firstFrame;
    private final double[][] samples;
    private long frame;

    private Running(
        Optional<Wiring.KeySignal> other,
        Optional<Processor> filter,
        int channelCount,
        long firstFrame) {
      this.other = other;
      this.filter = filter;
      this.firstFrame = firstFrame;
      frame = firstFrame;
      samples = new double[channelCount][CHUNK_FRAMES];
    }

    boolean isOther() {
      return other.isPresent();
    }

    /** Returns the key of the next frames, [channel][frame from 0]. */
    double[][] next(double[][] channels, int from, int count) {
      if (other.isPresent()) {
        other.get().read(frame, samples, count);
      } else {
        for (int c = 0; c < samples.length; c++) {
          System.arraycopy(channels[c], from, samples[c], 0, count);
        }
      }
      frame += count;
      if (filter.isPresent()) {
        filter.get().process(samples, 0, count);
      }
      return samples;
    }

    void reset() {
      frame = firstFrame;
      filter.ifPresent(Processor::reset);
    }
  }
}
