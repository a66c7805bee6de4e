package chainwright.app.render;

import chainwright.app.audiofile.AudioReader;
import chainwright.app.audiofile.AudioWriter;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.sound.LevelGauge;
import chainwright.engine.sound.MeasuredLevel;
import chainwright.engine.sound.PartRender;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * Goes once through a take: reads, processes, measures, and writes where there is something to
 * write to. Holds one block at a time.
 */
final class RenderPass {

  /** As large as a fast cache holds with two channels of doubles; common practice, no source. */
  private static final int BLOCK_FRAMES = 4096;

  private final AudioReader take;
  private final RenderOrder order;
  private final PartRender render;
  private final int channels;
  private final double[][] block;
  private final LevelGauge before;
  private final LevelGauge after;
  private final long tailFrames;

  private final long toFrame;

  RenderPass(AudioReader take, RenderOrder order) {
    this.take = take;
    this.order = order;
    int takeChannels = take.format().channels();
    channels = order.isMadeStereo() ? 2 : takeChannels;
    tailFrames = order.toFrame().isPresent() ? 0 : order.design().tailFrames();
    toFrame = order.toFrame().orElse(take.frames());
    render =
        PartRender.of(
            order.design(), Wiring.ofChannels(channels), order.fromFrame(), toFrame + tailFrames);
    block = new double[channels][BLOCK_FRAMES];
    SampleRate rate = SampleRate.ofHertz(take.format().sampleRateHz());
    before = new LevelGauge(rate, takeChannels);
    after = new LevelGauge(rate, channels);
  }

  /** Renders all of it, with a gain; the gauges hear it without. */
  void run(Optional<AudioWriter> writer, double gainDb, RenderProgress progress, boolean isAgain)
      throws IOException {
    double factor = Math.pow(10, gainDb / 20);
    take.seek(0);
    long done = 0;
    while (done < render.inputFrames()) {
      int count = (int) Math.min(BLOCK_FRAMES, render.inputFrames() - done);
      read(done, count);
      int first = render.process(block, count);
      requireNumbers(first, count, done, "the chain puts out");
      after.process(block, first, count - first);
      if (writer.isPresent()) {
        amplify(first, count, factor);
        writer.get().write(block, first, count - first);
      }
      done += count;
      progress.done((double) done / render.inputFrames(), isAgain);
    }
  }

  private void read(long start, int count) throws IOException {
    int filled = take.read(block, 0, count);
    for (double[] plane : block) {
      Arrays.fill(plane, filled, count, 0);
    }
    double[][] planes = order.isMadeStereo() ? new double[][] {block[0]} : block;
    requireNumbers(0, filled, start, "the take holds");
    int from = (int) Math.max(0, Math.min(filled, order.fromFrame() - start));
    int to = (int) Math.max(from, Math.min(filled, toFrame - start));
    before.process(planes, from, to - from);
    if (order.isMadeStereo()) {
      System.arraycopy(block[0], 0, block[1], 0, count);
    }
  }

  private void amplify(int from, int to, double factor) {
    if (factor != 1) {
      for (double[] plane : block) {
        for (int i = from; i < to; i++) {
          plane[i] *= factor;
        }
      }
    }
  }

  private void requireNumbers(int from, int to, long start, String who) throws IOException {
    for (double[] plane : block) {
      for (int i = from; i < to; i++) {
        if (!Double.isFinite(plane[i])) {
          double seconds = (start + i) / take.format().sampleRateHz();
          throw new IOException(
              String.format(
                  Locale.ROOT,
                  "%s %s at %.3f s, which no loudspeaker should get; nothing was written",
                  who,
                  Double.isNaN(plane[i]) ? "a sample that is no number" : "an infinite sample",
                  seconds));
        }
      }
    }
  }

  int channels() {
    return channels;
  }

  long tailFrames() {
    return tailFrames;
  }

  MeasuredLevel takeLevel() {
    return before.measure();
  }

  MeasuredLevel renderLevel() {
    return after.measure();
  }
}
