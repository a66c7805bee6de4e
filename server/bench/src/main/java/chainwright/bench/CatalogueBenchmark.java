package chainwright.bench;

import chainwright.notation.catalogue.Catalogue;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Warmup;

/** What loading the catalogue costs a start: once in a new process, its classes included. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
@Fork(10)
public class CatalogueBenchmark {

  /** Made by the benchmark's runner. */
  public CatalogueBenchmark() {}

  /**
   * Loads the catalogue.
   *
   * @return the catalogue
   */
  @Benchmark
  public Catalogue load() {
    return Catalogue.load();
  }
}
