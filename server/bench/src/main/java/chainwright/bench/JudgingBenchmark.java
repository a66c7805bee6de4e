package chainwright.bench;

import chainwright.engine.judge.Judge;
import chainwright.engine.judge.Judgement;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.SyntaxTree;
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

/**
 * What it costs to read what a text says and to judge it, on one thread: all of it, and an edit.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class JudgingBenchmark {

  private static final String KEY = "/measured.chain";

  /** How long the text is [lines]. */
  @Param({"100", "1000", "10000"})
  public int lines;

  private final SectionReader reader = new SectionReader(Catalogue.load());
  private final Judge judge = new Judge(Catalogue.load());
  private SyntaxTree tree = SyntaxTree.parse("");
  private SyntaxTree editedTree = tree;
  private SourceFile file = SourceFile.of(KEY, "", reader);
  private SourceFile edited = file;
  private Judgement judgement = Judgement.NONE;

  /** Made by the benchmark's runner. */
  public JudgingBenchmark() {}

  /** Writes the text, and the same with a letter more in its last chain. */
  @Setup
  public void write() {
    String text = LongText.of(lines);
    int end = text.lastIndexOf("bell");
    tree = SyntaxTree.parse(text);
    editedTree = tree.withText(text.substring(0, end) + "b" + text.substring(end));
    file = SourceFile.of(KEY, tree, reader);
    edited = file.withTree(editedTree);
    judgement = judge.judge(project(file), KEY, Judgement.NONE);
  }

  /**
   * Reads what every section says.
   *
   * @return what they say
   */
  @Benchmark
  public List<Lowered> lower() {
    return reader.readAll(tree.sections());
  }

  /**
   * Reads what the text says after an edit.
   *
   * @return the file
   */
  @Benchmark
  public SourceFile lowerEdit() {
    return file.withTree(editedTree);
  }

  /**
   * Judges every chain.
   *
   * @return the findings
   */
  @Benchmark
  public Judgement judge() {
    return judge.judge(project(file), KEY, Judgement.NONE);
  }

  /**
   * Judges the text after an edit.
   *
   * @return the findings
   */
  @Benchmark
  public Judgement judgeEdit() {
    return judge.judge(project(edited), KEY, judgement);
  }

  private static Project project(SourceFile file) {
    return new Project(List.of(file));
  }
}
