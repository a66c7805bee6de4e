package chainwright.bench;

import chainwright.app.assist.Completing;
import chainwright.app.assist.HoverText;
import chainwright.app.assist.Hovering;
import chainwright.app.assist.WrittenLine;
import chainwright.app.plot.PlotTheme;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.NearbyFiles;
import chainwright.app.workspace.Workspace;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Definition;
import chainwright.notation.project.SourceFile;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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

/** What an editor's questions about the last chain of a text cost, without the protocol. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class AssistBenchmark {

  /** How long the text is [lines]. */
  @Param({"100", "1000", "10000"})
  public int lines;

  private final SectionReader reader = new SectionReader(Catalogue.load());
  private final Workspace workspace = Workspace.ofFolders(List.of(), reader);
  private DocumentSnapshot document =
      DocumentSnapshot.ofEditor("file:///measured.chain", 1, "", reader);
  private int section;
  private int name;
  private int stage;
  private int caret;

  /** Made by the benchmark's runner. */
  public AssistBenchmark() {}

  /** Writes the text and finds the places that are asked about. */
  @Setup
  public void write() {
    String text = LongText.of(lines);
    document = DocumentSnapshot.ofEditor("file:///measured.chain", 1, text, reader);
    int bell = text.lastIndexOf("bell");
    section = document.tree().sectionAt(bell);
    int start = document.tree().startOf(section);
    name = text.lastIndexOf("voice-") - start;
    stage = bell - start;
    caret = text.indexOf(" Q 2.2", bell) + 1 - start;
  }

  /**
   * Hovers over a stage, its plot in characters.
   *
   * @return what is shown
   */
  @Benchmark
  public Optional<HoverText> hoverText() {
    return hover(stage, Optional.empty());
  }

  /**
   * Hovers over a stage, its plot as a picture.
   *
   * @return what is shown
   */
  @Benchmark
  public Optional<HoverText> hoverPicture() {
    return hover(stage, Optional.of(PlotTheme.LIGHT));
  }

  /**
   * Hovers over the name of the chain, its plot as a picture.
   *
   * @return what is shown
   */
  @Benchmark
  public Optional<HoverText> hoverChain() {
    return hover(name, Optional.of(PlotTheme.LIGHT));
  }

  /**
   * Asks what could be written on the line of a stage.
   *
   * @return the proposals
   */
  @Benchmark
  public Completing.Answer completion() {
    WrittenLine line = WrittenLine.of(document.tree().sections().get(section), caret).orElseThrow();
    return new Completing(
            Catalogue.load(),
            scope(),
            new NearbyFiles(document, workspace),
            document.file().sections().get(section).definition(),
            Set.of())
        .at(line);
  }

  private Optional<HoverText> hover(int offset, Optional<PlotTheme> picture) {
    Definition definition = document.file().sections().get(section).definition().orElseThrow();
    return new Hovering(scope(), Catalogue.load(), picture).at(definition, offset);
  }

  private chainwright.notation.project.Scope scope() {
    SourceFile file = document.file();
    return workspace.projectOf(document).scope(file.key());
  }
}
