package chainwright.app.render;

import chainwright.app.audiofile.AudioReader;
import chainwright.app.audiofile.AudioWriter;
import chainwright.engine.mix.FeedRun;
import chainwright.engine.mix.MixFeed;
import chainwright.engine.mix.MixNode;
import chainwright.engine.mix.MixPlan;
import chainwright.engine.mix.NodeRun;
import chainwright.engine.sound.LevelGauge;
import chainwright.engine.sound.MeasuredLevel;
import chainwright.engine.sound.RateLeg;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Goes once through all takes of a mix: reads, processes, measures, and writes where there is
 * something to write to. Holds a few blocks of each chain and bus at a time.
 */
final class MixPass {

  /** As large as a fast cache holds with two channels of doubles; common practice, no source. */
  static final int BLOCK_FRAMES = 4096;

  private final RenderOrder order;
  private final MixPlan plan;
  private final RenderProgress progress;
  private final boolean isAgain;
  private final long allFrames;
  private final BlockPipeline pipeline = new BlockPipeline();
  private final List<TakeRead> takes = new ArrayList<>();
  private final List<double[][][]> outputs = new ArrayList<>();
  private final List<Integer> nodeWorks = new ArrayList<>();
  private final LevelGauge after;

  /**
   * Prepares a pass.
   *
   * @param readers the takes, by the names of their chains
   * @param order what is to be rendered
   * @param gainDb a gain at the end [dB]
   * @param writer gets the render
   * @param stems gets what goes into each bus
   * @param progress is told how far it is
   * @param isAgain whether it is the second pass
   */
  MixPass(
      Map<String, AudioReader> readers,
      RenderOrder order,
      double gainDb,
      Optional<AudioWriter> writer,
      Optional<StemFolder> stems,
      RenderProgress progress,
      boolean isAgain)
      throws IOException {
    this.order = order;
    this.progress = progress;
    this.isAgain = isAgain;
    plan = order.plan();
    MixNode target = plan.target();
    allFrames =
        target.latencyFrames()
            + Math.max(
                target.sound().neededFrames(order.endFileFrame()),
                order.stems().map(this::neededFrames).orElse(0L));
    after = new LevelGauge(SampleRate.ofHertz(order.fileRateHz()), target.channelCount());
    for (int i = 0; i < plan.nodes().size(); i++) {
      add(i, readers, i == plan.nodes().size() - 1 ? gainDb : 0, stems);
    }
    deliver(target, gainDb, writer);
  }

  private void deliver(MixNode target, double gainDb, Optional<AudioWriter> writer) {
    int last = nodeWorks.get(nodeWorks.size() - 1);
    Outlet meant = new Slots(outputs.get(outputs.size() - 1), target.latencyFrames());
    List<RateLeg> legs = target.sound().legs(gainDb);
    Outlet delivered = meant;
    if (!legs.isEmpty()) {
      SampleCheck check = new SampleCheck("the render holds", order.fileRateHz());
      DeliveryWork work = new DeliveryWork(meant, legs, target.channelCount(), check);
      last = pipeline.add(work, List.of(last));
      delivered = work;
    }
    Outlet file = delivered;
    long from = order.firstFileFrame();
    long to = order.endFileFrame();
    pipeline.add(block -> measure(block, file, from, to), List.of(last));
    if (writer.isPresent()) {
      pipeline.add(block -> write(writer.get(), block, file, from, to), List.of(last));
    }
  }

  private void add(
      int index, Map<String, AudioReader> readers, double gainDb, Optional<StemFolder> stems)
      throws IOException {
    MixNode node = plan.nodes().get(index);
    List<Integer> works = new ArrayList<>();
    List<double[][][]> inlets = new ArrayList<>();
    AudioReader reader = readers.get(node.name());
    if (node.take().isPresent() && reader != null) {
      TakeRead take = new TakeRead(reader, node, order);
      if (plan.heardTakes().contains(node)) {
        takes.add(take);
      }
      works.add(pipeline.add(take, List.of()));
      inlets.add(take.slots());
    }
    for (MixFeed feed : node.feeds()) {
      double[][][] slots = slots(node.channelCount());
      int work = feed(feed, node, slots);
      works.add(work);
      inlets.add(slots);
      if (stems.isPresent()) {
        AudioWriter stem =
            stems.get().add(node.name(), plan.nodes().get(feed.from()).name(), node.channelCount());
        addStem(stem, node, slots, work);
      }
    }
    NodeRun run = new NodeRun(plan, index, gainDb, BLOCK_FRAMES);
    List<double[][][]> heard = new ArrayList<>();
    for (int key : run.keys()) {
      works.add(nodeWorks.get(key));
      heard.add(outputs.get(key));
    }
    List<List<double[][]>> inputs = bySlot(inlets);
    List<List<double[][]>> keys = bySlot(heard);
    double[][][] output = slots(node.channelCount());
    outputs.add(output);
    SampleCheck check =
        new SampleCheck(
            isAlone() ? "the chain puts out" : "`" + node.name() + "` puts out", order.rateHz());
    nodeWorks.add(
        pipeline.add(
            block -> {
              int count = count(block);
              double[][] out = slot(output, block);
              int slot = (int) (block % BlockPipeline.DEPTH);
              run.process(inputs.get(slot), keys.get(slot), out, count);
              check.check(out, 0, count, block * BLOCK_FRAMES - node.latencyFrames());
            },
            works));
  }

  private long neededFrames(StemOrder stems) {
    return stems.neededFrames(stems.deliveredFrames(order.toFrame()));
  }

  /** Writes what comes to a bus from one of its sources. */
  private void addStem(AudioWriter stem, MixNode bus, double[][][] slots, int source) {
    StemOrder stems =
        order.stems().orElseThrow(() -> new IllegalStateException("no stems are wanted"));
    Outlet outlet = new Slots(slots, bus.arrivalFrames());
    int last = source;
    if (!stems.legs().isEmpty()) {
      SampleCheck check = new SampleCheck("a stem holds", stems.to().hertz());
      DeliveryWork work = new DeliveryWork(outlet, stems.legs(), bus.channelCount(), check);
      last = pipeline.add(work, List.of(source));
      outlet = work;
    }
    Outlet file = outlet;
    long from = stems.deliveredFrames(order.fromFrame());
    long to = stems.deliveredFrames(order.toFrame());
    pipeline.add(block -> write(stem, block, file, from, to), List.of(last));
  }

  private int feed(MixFeed feed, MixNode bus, double[][][] slots) {
    FeedRun run = new FeedRun(feed, bus.channelCount());
    double[][][] source = outputs.get(feed.from());
    return pipeline.add(
        block -> run.process(slot(source, block), slot(slots, block), count(block)),
        List.of(nodeWorks.get(feed.from())));
  }

  /** What lies in each slot of several sounds. */
  private static List<List<double[][]>> bySlot(List<double[][][]> sounds) {
    List<List<double[][]>> slots = new ArrayList<>();
    for (int i = 0; i < BlockPipeline.DEPTH; i++) {
      int slot = i;
      slots.add(sounds.stream().map(sound -> sound[slot]).toList());
    }
    return slots;
  }

  private boolean isAlone() {
    return plan.nodes().size() == 1;
  }

  private static double[][][] slots(int channels) {
    return new double[BlockPipeline.DEPTH][channels][BLOCK_FRAMES];
  }

  private static double[][] slot(double[][][] slots, long block) {
    return slots[(int) (block % BlockPipeline.DEPTH)];
  }

  private int count(long block) {
    return (int) Math.min(BLOCK_FRAMES, allFrames - block * BLOCK_FRAMES);
  }

  /** What lies in slots, late by some frames. */
  private final class Slots implements Outlet {
    private final double[][][] slots;
    private final int lateFrames;

    Slots(double[][][] slots, int lateFrames) {
      this.slots = slots;
      this.lateFrames = lateFrames;
    }

    @Override
    public double[][] sound(long block) {
      return slot(slots, block);
    }

    @Override
    public int count(long block) {
      return MixPass.this.count(block);
    }

    @Override
    public long startFrame(long block) {
      return block * BLOCK_FRAMES - lateFrames;
    }
  }

  private void measure(long block, Outlet file, long fromFrame, long toFrame) {
    int from = place(block, file, fromFrame);
    after.process(file.sound(block), from, place(block, file, toFrame) - from);
    progress.done((double) Math.min(allFrames, (block + 1) * BLOCK_FRAMES) / allFrames, isAgain);
  }

  /** Where in a block a frame lies, at its start or end if it lies before or behind. */
  private static int place(long block, Outlet outlet, long frame) {
    return (int) Math.max(0, Math.min(outlet.count(block), frame - outlet.startFrame(block)));
  }

  private static void write(
      AudioWriter writer, long block, Outlet outlet, long fromFrame, long toFrame)
      throws IOException {
    int from = place(block, outlet, fromFrame);
    writer.write(outlet.sound(block), from, place(block, outlet, toFrame) - from);
  }

  /** Goes through the takes. */
  void run() throws IOException {
    pipeline.run((allFrames + BLOCK_FRAMES - 1) / BLOCK_FRAMES, order.threads());
  }

  /** The loudest of the takes, and the highest of their peaks. */
  MeasuredLevel takeLevel() {
    double loudest = Double.NaN;
    double highest = Double.NEGATIVE_INFINITY;
    for (TakeRead take : takes) {
      MeasuredLevel level = take.level();
      // No loudness at all, for a take that is too short, is less than any.
      loudest =
          Double.isNaN(loudest) || level.integratedLufs() > loudest
              ? level.integratedLufs()
              : loudest;
      highest = Math.max(highest, level.truePeakDbtp());
    }
    return new MeasuredLevel(loudest, highest);
  }

  int takeCount() {
    return takes.size();
  }

  MeasuredLevel renderLevel() {
    return after.measure();
  }
}
