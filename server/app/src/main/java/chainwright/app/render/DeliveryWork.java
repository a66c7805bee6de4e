package chainwright.app.render;

import chainwright.engine.sound.RateLeg;
import chainwright.engine.sound.RateLegsRun;
import java.io.IOException;
import java.util.List;

/**
 * Converts what is meant to the sample rates behind its changes, and runs what stands there. What
 * comes is late; that is dropped, so that the first frame handed on is that of the time 0.
 */
final class DeliveryWork implements BlockPipeline.Work, Outlet {

  private final Outlet source;
  private final RateLegsRun run;
  private final SampleCheck check;
  private final double[][][] slots;
  private final int[] counts = new int[BlockPipeline.DEPTH];
  private final long[] starts = new long[BlockPipeline.DEPTH];
  private long done;

  /**
   * Prepares.
   *
   * @param source what comes
   * @param legs the changes of the rate, at least one
   * @param channelCount how many channels
   * @param check looks at what goes out
   */
  DeliveryWork(Outlet source, List<RateLeg> legs, int channelCount, SampleCheck check) {
    this.source = source;
    this.check = check;
    run = new RateLegsRun(legs, channelCount, MixPass.BLOCK_FRAMES);
    slots = new double[BlockPipeline.DEPTH][channelCount][run.mostOutputFrames()];
  }

  @Override
  public void run(long block) throws IOException {
    int slot = (int) (block % BlockPipeline.DEPTH);
    int count = source.count(block);
    int early = (int) Math.max(0, Math.min(count, -source.startFrame(block)));
    counts[slot] = run.process(source.sound(block), early, count - early, slots[slot]);
    starts[slot] = done;
    done += counts[slot];
    check.check(slots[slot], 0, counts[slot], starts[slot]);
  }

  @Override
  public double[][] sound(long block) {
    return slots[(int) (block % BlockPipeline.DEPTH)];
  }

  @Override
  public int count(long block) {
    return counts[(int) (block % BlockPipeline.DEPTH)];
  }

  @Override
  public long startFrame(long block) {
    return starts[(int) (block % BlockPipeline.DEPTH)];
  }
}
