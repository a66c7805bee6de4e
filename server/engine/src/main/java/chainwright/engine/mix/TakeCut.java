package chainwright.engine.mix;

import chainwright.engine.sound.SoundBuilder;
import java.util.Arrays;

/**
 * Lets a chain be heard in the part of its take that is meant: silence before and after it. Where
 * the part begins or ends within the take, it comes and goes by a raised cosine within the part, as
 * long as the changes at both ends of a passage, so that the cut does not click.
 */
final class TakeCut {

  private final long fromFrame;
  private final long toFrame;
  private final double comingFrames;
  private final double goingFrames;

  private TakeCut(long fromFrame, long toFrame, double comingFrames, double goingFrames) {
    this.fromFrame = fromFrame;
    this.toFrame = toFrame;
    this.comingFrames = comingFrames;
    this.goingFrames = goingFrames;
  }

  /** Cuts nothing: what is meant itself is cut out of the file that it is rendered to. */
  static TakeCut none() {
    return new TakeCut(Long.MIN_VALUE, Long.MAX_VALUE, 0, 0);
  }

  /**
   * Cuts the sound of a chain.
   *
   * @param take its take, and the part that is meant
   * @param endFrame where its sound ends, what goes on sounding included [frames]
   * @param rateHz the sample rate [Hz]
   */
  static TakeCut of(MixTake take, long endFrame, double rateHz) {
    double half = (endFrame - take.fromFrame()) / 2.0;
    double fade = Math.min(half, SoundBuilder.EDGE_SECONDS * rateHz);
    boolean endsWithin = take.toFrame().orElse(take.frames()) < take.frames();
    return new TakeCut(
        take.fromFrame(), endFrame, take.fromFrame() > 0 ? fade : 0, endsWithin ? fade : 0);
  }

  /**
   * Cuts a block in place.
   *
   * @param sound the samples, [channel][frame]
   * @param start what frame of the take the first is
   * @param count how many frames
   */
  void apply(double[][] sound, long start, int count) {
    int from = place(fromFrame, start, count);
    int to = place(toFrame, start, count);
    for (double[] channel : sound) {
      Arrays.fill(channel, 0, from, 0);
      Arrays.fill(channel, to, count, 0);
    }
    if (comingFrames > 0 && start < fromFrame + comingFrames) {
      int end = place((long) Math.ceil(fromFrame + comingFrames), start, count);
      for (int i = from; i < end; i++) {
        scale(sound, i, share((start + i - fromFrame + 0.5) / comingFrames));
      }
    }
    if (goingFrames > 0 && start + count > toFrame - goingFrames) {
      for (int i = place((long) Math.floor(toFrame - goingFrames), start, count); i < to; i++) {
        scale(sound, i, share((toFrame - start - i - 0.5) / goingFrames));
      }
    }
  }

  private static double share(double inside) {
    return inside >= 1 ? 1 : (1 - Math.cos(Math.PI * inside)) / 2;
  }

  private static void scale(double[][] sound, int frame, double factor) {
    for (double[] channel : sound) {
      channel[frame] *= factor;
    }
  }

  /** Where in a block a frame lies, at its start or end if it lies before or behind. */
  private static int place(long frame, long start, int count) {
    boolean isNever = frame == Long.MIN_VALUE || frame == Long.MAX_VALUE;
    return (int) Math.max(0, Math.min(count, isNever ? frame : frame - start));
  }
}
