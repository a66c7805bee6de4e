package chainwright.engine.sound;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;

/**
 * Renders a take, or a part of it, that is handed in block by block.
 *
 * <p>The take is handed in from its first frame, and silence after its end, {@link #inputFrames} in
 * all. So a part sounds as it does in the whole, bit for bit, and a time of the recording stays
 * what it was. What comes out is in time with the take: the processors' latency is dropped at the
 * start.
 */
public final class PartRender {

  private final Processor processor;
  private final long inputFrames;
  private final long outputFrames;
  private long early;

  private PartRender(ProcessorDesign design, Wiring wiring, long fromFrame, long toFrame) {
    processor = design.newProcessor(wiring);
    early = fromFrame + design.latencyFrames();
    outputFrames = toFrame - fromFrame;
    inputFrames = early + outputFrames;
  }

  /**
   * Renders what lies between two frames.
   *
   * @param design what processes the take
   * @param wiring the channels
   * @param fromFrame the first frame of the take that is rendered, ≥ 0
   * @param toFrame the frame after the last, not under the first; frames after the end of the take
   *     are what goes on sounding there
   * @return the render, at its start
   * @throws IllegalArgumentException if there is no such part
   */
  public static PartRender of(ProcessorDesign design, Wiring wiring, long fromFrame, long toFrame) {
    if (fromFrame < 0 || fromFrame > toFrame) {
      throw new IllegalArgumentException(
          "the part must begin at or after 0 and not end before, but was from "
              + fromFrame
              + " to "
              + toFrame);
    }
    return new PartRender(design, wiring, fromFrame, toFrame);
  }

  /**
   * Returns how much is rendered.
   *
   * @return the length of the part [frames]
   */
  public long outputFrames() {
    return outputFrames;
  }

  /**
   * Returns how much has to be handed in altogether.
   *
   * @return the frames of the take from its first one, and of silence after its end, until the part
   *     is complete [frames]
   */
  public long inputFrames() {
    return inputFrames;
  }

  /**
   * Processes the next block in place.
   *
   * @param channels the take's samples, [channel][frame], full scale 1.0; overwritten
   * @param count how many frames of each, from index 0
   * @return the first frame of the block that belongs to the part, as all after it do; {@code
   *     count} if none does
   * @throws IndexOutOfBoundsException if the block does not lie within each channel
   */
  public int process(double[][] channels, int count) {
    processor.process(channels, 0, count);
    int dropped = (int) Math.min(early, count);
    early -= dropped;
    return dropped;
  }
}
