package chainwright.dsp.repair;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.dsp.spectral.FrameOverlap;
import chainwright.quantity.SampleRate;

/**
 * Lowers steady noise: {@link FrameOverlap} takes the signal apart, {@link NoiseFloor} learns the
 * noise from the recording itself, {@link NoiseGain} turns down what does not rise above it.
 *
 * <p>Where there is only noise it is lowered by the reduction; nothing is lowered further. A
 * reduction of 0 dB gives the signal back but for rounding, 1e-15 of its largest sample. The signal
 * waits for a second, so that the noise is known from its start; what is held without a gap for
 * that second, or for 4 s later on, is taken for noise. Digital silence stays what it is and
 * teaches nothing. Samples that are no number come out where they came in.
 *
 * @param rate the sample rate
 * @param reductionDb how far noise is lowered [dB], 0 to 100
 * @param smoothingOctaves the width over which neighbouring bins move together [oct], 0 to 10
 */
public record NoiseReductionDesign(SampleRate rate, double reductionDb, double smoothingOctaves)
    implements ProcessorDesign {

  /** A frame is the shortest power of two that is as long, so up to twice as long [s]; ours. */
  private static final double SHORTEST_FRAME_SECONDS = 0.03;

  /** How long a frame waits for those after it [s]; ours. */
  private static final double LOOK_AHEAD_SECONDS = 1;

  /**
   * Checks the numbers.
   *
   * @param rate the sample rate
   * @param reductionDb how far noise is lowered [dB]
   * @param smoothingOctaves the width over which neighbouring bins move together [oct]
   * @throws IllegalArgumentException if a number is outside its range
   */
  public NoiseReductionDesign {
    if (!(reductionDb >= 0 && reductionDb <= 100)
        || !(smoothingOctaves >= 0 && smoothingOctaves <= 10)) {
      throw new IllegalArgumentException(
          "the reduction must lie between 0 and 100 dB and the smoothing between 0 and 10 octaves,"
              + " but were "
              + reductionDb
              + " and "
              + smoothingOctaves);
    }
  }

  @Override
  public int latencyFrames() {
    return frameLength() + waitingFrames() * hop();
  }

  @Override
  public int tailFrames() {
    return frameLength();
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new StrayDetourDesign(new Unguarded()).newProcessor(wiring);
  }

  private int frameLength() {
    int shortest = (int) Math.ceil(SHORTEST_FRAME_SECONDS * rate.hertz());
    return Math.max(16, Integer.highestOneBit(shortest - 1) * 2);
  }

  private int hop() {
    return frameLength() / 4;
  }

  private int waitingFrames() {
    return Math.max(1, (int) Math.round(LOOK_AHEAD_SECONDS * rate.hertz() / hop()));
  }

  private final class Unguarded implements ProcessorDesign {

    @Override
    public int latencyFrames() {
      return NoiseReductionDesign.this.latencyFrames();
    }

    @Override
    public Processor newProcessor(Wiring wiring) {
      int binCount = frameLength() / 2 + 1;
      double hopSeconds = hop() / rate.hertz();
      NoiseReduction stage =
          new NoiseReduction(
              new NoiseFloor(binCount, hopSeconds),
              new NoiseGain(binCount, hopSeconds, reductionDb, smoothingOctaves),
              wiring.channelCount(),
              binCount,
              waitingFrames());
      return new FrameOverlap(stage, wiring.channelCount(), frameLength());
    }
  }
}
