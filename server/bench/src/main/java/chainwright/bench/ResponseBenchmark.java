package chainwright.bench;

import chainwright.dsp.filter.FrequencyGrid;
import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.SignalPath;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import chainwright.quantity.SampleRate;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What one chain of a high-pass, a bell, a de-esser, a compressor and a shelf costs. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ResponseBenchmark {

  private static final String KEY = "/measured.chain";
  private static final String TEXT =
      """
      chain voice {
        source      lead-vocal
        high-pass   66 Hz  18 dB/oct
        bell        3.1 kHz  -2.5 dB  Q 2.2
        de-ess      band 5.5 to 9 kHz  threshold -30 dBFS
        compressor  threshold -21 dBFS  ratio 3:1  attack 12 ms  release 90 ms
        high-shelf  11.5 kHz  +2 dB
      }
      """;

  /** At how many frequencies the response is taken. */
  @Param({"121", "1001"})
  public int points;

  private final Project project =
      new Project(List.of(SourceFile.of(KEY, TEXT, new SectionReader(Catalogue.load()))));
  private final PathBuilder builder = new PathBuilder(project.scope(KEY));
  private final Definition.Track track = builder.scope().track("voice").orElseThrow();
  private SignalPath path = builder.build(track);
  private double[] hertz = {};

  /** Made by the benchmark's runner. */
  public ResponseBenchmark() {}

  /** Makes the grid. */
  @Setup
  public void grid() {
    hertz = FrequencyGrid.audible(SampleRate.ofHertz(48_000), points).toHertz();
    path = builder.build(track);
  }

  /**
   * Takes the response of the chain, its filters designed before.
   *
   * @return the response [dB]
   */
  @Benchmark
  public double[] decibels() {
    return path.response().toDecibels(hertz);
  }

  /**
   * Builds the chain, designs its filters and takes its response.
   *
   * @return the response [dB]
   */
  @Benchmark
  public double[] designAndDecibels() {
    return builder.build(track).response().toDecibels(hertz);
  }
}
