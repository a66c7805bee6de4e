package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.path.SignalPath;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.NullMarked;

/** Sounds made by the processors of a chain. */
@NullMarked
final class Rendered {

  private static final int BLOCK = 4096;

  /** A response has decayed once nothing above this has come for a block. */
  private static final double DECAYED = 1e-12;

  private static final int LONGEST = 1 << 22;

  private Rendered() {}

  /** Returns what processes a path, all of whose stages must sound. */
  static ProcessorDesign design(SignalPath path) {
    PathSound sound = SoundBuilder.build(path, false);
    assertThat(sound.silentStages()).isEmpty();
    return sound.processor();
  }

  /** Returns the response to an impulse in one channel, until it has decayed. */
  static double[] impulseResponse(ProcessorDesign design) {
    Processor processor = design.newProcessor(Wiring.ofChannels(1));
    double[] all = new double[0];
    double[][] block = new double[1][BLOCK];
    boolean goesOn = true;
    while (goesOn) {
      Arrays.fill(block[0], 0);
      if (all.length == 0) {
        block[0][0] = 1;
      }
      processor.process(block, 0, BLOCK);
      int start = all.length;
      all = Arrays.copyOf(all, start + BLOCK);
      System.arraycopy(block[0], 0, all, start, BLOCK);
      boolean isLoud = Arrays.stream(block[0]).anyMatch(x -> Math.abs(x) > DECAYED);
      goesOn = isLoud || all.length <= design.latencyFrames() + BLOCK;
      assertThat(all.length).as("frames without decay").isLessThan(LONGEST);
    }
    return all;
  }

  /** Returns a signal that is processed in blocks of the sizes given, again and again. */
  static double[][] inBlocks(Processor processor, double[][] signal, List<Integer> sizes) {
    double[][] out = Arrays.stream(signal).map(double[]::clone).toArray(double[][]::new);
    int from = 0;
    for (int i = 0; from < out[0].length; i++) {
      int to = Math.min(out[0].length, from + sizes.get(i % sizes.size()));
      processor.process(out, from, to);
      from = to;
    }
    return out;
  }

  /** Returns noise with bursts, so that processors of level have something to do. */
  static double[][] noise(int channelCount, int frames, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] signal = new double[channelCount][frames];
    for (int i = 0; i < frames; i++) {
      double level = (i / 1500) % 3 == 0 ? 0.9 : 0.05;
      for (double[] channel : signal) {
        channel[i] = level * (2 * random.nextDouble() - 1);
      }
    }
    return signal;
  }
}
