package chainwright.bench;

import chainwright.notation.format.Formatting;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.LineIndex;
import chainwright.notation.text.TextEdit;
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

/** What parsing and formatting cost: a whole text, and one edit in it. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class SyntaxBenchmark {

  /** How long the text is [lines]. */
  @Param({"100", "1000", "10000"})
  public int lines;

  private String text = "";
  private String edited = "";
  private SyntaxTree tree = SyntaxTree.parse("");

  /** Made by the benchmark's runner. */
  public SyntaxBenchmark() {}

  /** Writes the text. */
  @Setup
  public void write() {
    text = LongText.of(lines);
    edited = text.substring(0, text.length() - 20) + "x" + text.substring(text.length() - 20);
    tree = SyntaxTree.parse(text);
  }

  /**
   * Parses the whole text.
   *
   * @return the tree
   */
  @Benchmark
  public SyntaxTree parse() {
    return SyntaxTree.parse(text);
  }

  /**
   * Parses the text after an edit near its end.
   *
   * @return the tree
   */
  @Benchmark
  public SyntaxTree edit() {
    return tree.withText(edited);
  }

  /**
   * Lays the whole text out.
   *
   * @return the edits
   */
  @Benchmark
  public List<TextEdit> format() {
    return Formatting.edits(tree);
  }

  /**
   * Finds the lines.
   *
   * @return the index
   */
  @Benchmark
  public LineIndex lineIndex() {
    return LineIndex.of(text);
  }
}
