package chainwright.bench;

import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.Wiring;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What a chain takes for a second of a programme, stereo at 48 kHz. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 7, time = 2)
@Fork(1)
public class ChainBenchmark {

  private static final int SECONDS = 10;
  private static final int BLOCK = 4096;

  /** The name of the chain. */
  @Param({"TEN_SECTIONS", "VOCAL"})
  public String chain = "";

  private final double[][] programme = Signals.programme(SECONDS);
  private final double[][] block = new double[2][BLOCK];
  private Processor processor;

  /** Made by the benchmark's runner. */
  public ChainBenchmark() {
    processor = Chains.design("").newProcessor(Wiring.ofChannels(2));
  }

  /** Starts the chain. */
  @Setup
  public void start() {
    String lines = chain.equals("VOCAL") ? Chains.VOCAL : Chains.TEN_SECTIONS;
    processor = Chains.design(lines).newProcessor(Wiring.ofChannels(2));
  }

  /**
   * Processes the programme, block by block.
   *
   * @return a sample, so that nothing is left out
   */
  @Benchmark
  @OperationsPerInvocation(SECONDS)
  public double process() {
    int frames = programme[0].length;
    for (int from = 0; from < frames; from += BLOCK) {
      int count = Math.min(BLOCK, frames - from);
      for (int c = 0; c < 2; c++) {
        System.arraycopy(programme[c], from, block[c], 0, count);
      }
      processor.process(block, 0, count);
    }
    return block[0][0];
  }
}
