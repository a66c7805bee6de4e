package chainwright.engine.mix;

import chainwright.engine.sound.SoundBuilder;
import java.util.Arrays;

/**
 * Lets a chain sound of the part of its take that is meant.
 *
 * <p>What comes before the part goes through the chain, so that its detectors have settled, but is
 * not heard: the output is silent up to there. Behind the part nothing goes into the chain any
 * more, so that what sounds on is that of the part alone. Where the part begins or ends within the
 * take, it comes and goes by a raised cosine within the part, as long as the changes at both ends
 * of a passage, so that the cut does not click.
 *
 * <p>Where other sounds go through the same stages, those stay whole, and the take is cut at both
 * ends as it goes in.
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

  /** Cuts nothing. */
  static TakeCut none() {
    return new TakeCut(Long.MIN_VALUE, Long.MAX_VALUE, 0, 0);
  }

  /**
   * Cuts what goes into a chain.
   *
   * @param take its take, and the part that is meant
   * @param isShared whether other sounds go in with it
   * @param rateHz the sample rate [Hz]
   */
  static TakeCut ofInput(MixTake take, boolean isShared, double rateHz) {
    boolean endsWithin = take.endFrame() < take.frames();
    return new TakeCut(
        isShared ? take.fromFrame() : Long.MIN_VALUE,
        endsWithin ? take.endFrame() : Long.MAX_VALUE,
        isShared ? comingFrames(take, rateHz) : 0,
        endsWithin ? fadeFrames(take, rateHz) : 0);
  }

  /**
   * Cuts what comes out of a chain that nothing else goes into.
   *
   * @param take its take, and the part that is meant
   * @param endFrame where its sound ends, what goes on sounding included [frames]
   * @param rateHz the sample rate [Hz]
   */
  static TakeCut ofOutput(MixTake take, long endFrame, double rateHz) {
    return new TakeCut(take.fromFrame(), endFrame, comingFrames(take, rateHz), 0);
  }

  private static double comingFrames(MixTake take, double rateHz) {
    return take.fromFrame() > 0 ? fadeFrames(take, rateHz) : 0;
  }

  private static double fadeFrames(MixTake take, double rateHz) {
    double half = (take.endFrame() - take.fromFrame()) / 2.0;
    return Math.min(half, SoundBuilder.EDGE_SECONDS * rateHz);
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
