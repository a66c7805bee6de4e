package chainwright.app.render;

import chainwright.app.audiofile.AudioReader;
import chainwright.engine.mix.MixNode;
import chainwright.engine.mix.MixTake;
import chainwright.engine.sound.LevelGauge;
import chainwright.engine.sound.MeasuredLevel;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.util.Arrays;

/**
 * Reads a take block by block, as late as its chain wants it, up to the end of what is meant of it,
 * and measures the part rendered.
 */
final class TakeRead implements BlockPipeline.Work {

  private final AudioReader take;
  private final int lateFrames;
  private final long fromFrame;
  private final long toFrame;
  private final long endFrame;
  private final LevelGauge gauge;
  private final double[][][] slots;

  /**
   * Begins at the start of a take.
   *
   * @param take the take
   * @param node its chain
   * @param order what part is rendered
   */
  TakeRead(AudioReader take, MixNode node, RenderOrder order) throws IOException {
    this.take = take;
    lateFrames = node.arrivalFrames();
    fromFrame = Math.max(order.fromFrame(), node.take().map(part -> part.fromFrame()).orElse(0L));
    endFrame = node.take().map(MixTake::endFrame).orElse(take.frames());
    toFrame = Math.min(order.toFrame(), endFrame);
    int channels = take.format().channels();
    gauge = new LevelGauge(SampleRate.ofHertz(order.rateHz()), channels);
    slots = new double[BlockPipeline.DEPTH][channels][MixPass.BLOCK_FRAMES];
    take.seek(0);
  }

  double[][][] slots() {
    return slots;
  }

  @Override
  public void run(long block) throws IOException {
    double[][] into = slots[(int) (block % BlockPipeline.DEPTH)];
    long start = block * MixPass.BLOCK_FRAMES - lateFrames;
    int silent = (int) Math.max(0, Math.min(MixPass.BLOCK_FRAMES, -start));
    long left = Math.max(0, endFrame - start - silent);
    int wanted = (int) Math.min(MixPass.BLOCK_FRAMES - silent, left);
    int filled = silent + (wanted == 0 ? 0 : take.read(into, silent, wanted));
    for (double[] plane : into) {
      Arrays.fill(plane, 0, silent, 0);
      Arrays.fill(plane, filled, MixPass.BLOCK_FRAMES, 0);
    }
    int from = (int) Math.max(silent, Math.min(filled, fromFrame - start));
    int to = (int) Math.max(from, Math.min(filled, toFrame - start));
    gauge.process(into, from, to - from);
  }

  MeasuredLevel level() {
    return gauge.measure();
  }
}
