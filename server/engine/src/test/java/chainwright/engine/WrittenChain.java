package chainwright.engine;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageSound;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.Project;
import chainwright.notation.project.Scope;
import chainwright.notation.project.SourceFile;
import java.util.List;

/** A file of a test, read with the real catalogue; a test whose text has an error fails. */
public final class WrittenChain {

  private static final String KEY = "/test.chain";

  private WrittenChain() {}

  /** Returns what the names of a text mean. */
  public static Scope scope(String text) {
    SourceFile file = SourceFile.of(KEY, text, new SectionReader(Catalogue.load()));
    assertThat(file.sections())
        .allSatisfy(
            section ->
                assertThat(section.findings())
                    .as(text)
                    .noneMatch(finding -> finding.severity() == Severity.ERROR));
    return new Project(List.of(file)).scope(KEY);
  }

  /** Returns the path of the chain or bus `c` of a text. */
  public static SignalPath path(String text) {
    Scope scope = scope(text);
    return new PathBuilder(scope).build(scope.track("c").orElseThrow());
  }

  /** Returns the path of a chain of these lines at 48 kHz. */
  public static SignalPath pathOf(String lines) {
    return path("chain c {\n" + lines + "\n}\n");
  }

  /** Returns what the only stage of a chain of one line does. */
  public static StageSound soundOf(String line) {
    List<PathElement.StageElement> stages = pathOf(line).stages();
    assertThat(stages).as(line).hasSize(1);
    return stages.get(0).sound().orElseThrow();
  }
}
