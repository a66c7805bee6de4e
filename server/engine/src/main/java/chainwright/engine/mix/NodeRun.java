package chainwright.engine.mix;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.Wiring;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A node at work: adds what comes to it, in the order of its feeds, and processes the sum.
 *
 * <p>A chain whose take has a part that is meant sounds of that part only ({@link TakeCut}). Its
 * output does not depend on the size of blocks.
 */
public final class NodeRun {

  private final MixNode node;
  private final Processor processor;
  private final Map<String, KeyHistory> keys = new LinkedHashMap<>();
  private final double[][] placed;
  private final TakeCut inputCut;
  private final TakeCut outputCut;
  private final int latencyFrames;
  private long frame;

  /**
   * Starts a node.
   *
   * @param plan the mix that it is in
   * @param index which node it is
   * @param gainDb a gain before a dither at its end [dB]
   * @param blockFrames the most frames of a block
   */
  public NodeRun(MixPlan plan, int index, double gainDb, int blockFrames) {
    node = plan.nodes().get(index);
    node.keys().forEach((name, key) -> keys.put(name, history(plan.nodes().get(key), blockFrames)));
    processor =
        node.sound().processor(gainDb).newProcessor(new Wiring(node.channelCount(), this::key));
    latencyFrames = node.latencyFrames();
    placed = new double[node.channelCount()][blockFrames];
    double rateHz = node.path().rate().hertz();
    boolean isShared = !node.feeds().isEmpty();
    inputCut =
        node.take().map(take -> TakeCut.ofInput(take, isShared, rateHz)).orElseGet(TakeCut::none);
    // What is meant ends where its file does.
    boolean isMeant = index == plan.nodes().size() - 1;
    long endFrame = isMeant ? Long.MAX_VALUE : node.endFrame();
    outputCut =
        node.take()
            .filter(take -> !isShared)
            .map(take -> TakeCut.ofOutput(take, endFrame, rateHz))
            .orElseGet(TakeCut::none);
  }

  private KeyHistory history(MixNode key, int blockFrames) {
    int capacity = blockFrames + node.latencyFrames() + 1;
    return new KeyHistory(key.channelCount(), key.latencyFrames(), capacity);
  }

  private Wiring.KeySignal key(String name) {
    KeyHistory found = keys.get(name);
    if (found == null) {
      throw new IllegalArgumentException("there is no signal `" + name + "` to listen to");
    }
    return found;
  }

  /**
   * Returns the nodes that must have put out a block before this one can take it.
   *
   * @return the indices of those that its detectors listen to, in the order that {@link #process}
   *     wants their sound in
   */
  public List<Integer> keys() {
    List<Integer> indices = new ArrayList<>();
    keys.keySet().forEach(name -> indices.add(node.keys().get(name)));
    return indices;
  }

  /**
   * Processes the next block.
   *
   * @param inputs what comes in, its take first: each [channel][frame], with as many channels as
   *     the node or fewer
   * @param heard the next blocks of what its detectors listen to
   * @param output receives what goes out, [channel][frame], from index 0
   * @param count how many frames
   */
  public void process(
      List<double[][]> inputs, List<double[][]> heard, double[][] output, int count) {
    int next = 0;
    for (KeyHistory history : keys.values()) {
      history.append(heard.get(next), count);
      next++;
    }
    for (double[] channel : output) {
      Arrays.fill(channel, 0, count, 0);
    }
    for (int k = 0; k < inputs.size(); k++) {
      FeedRun.place(inputs.get(k), placed, count);
      if (k == 0) {
        inputCut.apply(placed, frame - node.arrivalFrames(), count);
      }
      for (int c = 0; c < output.length; c++) {
        for (int i = 0; i < count; i++) {
          output[c][i] += placed[c][i];
        }
      }
    }
    processor.process(output, 0, count);
    outputCut.apply(output, frame - latencyFrames, count);
    frame += count;
  }
}
