package chainwright.app.view;

import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.SignalPath;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.Project;
import chainwright.notation.project.Scope;
import chainwright.notation.project.SourceFile;
import java.util.List;

/** The path of a chain of some stages, as it is drawn. */
final class DrawnPath {

  private DrawnPath() {}

  /** Builds it from lines with a comma between two. */
  static SignalPath of(String stages) {
    String text = "chain c {\n  " + stages.replace(", ", "\n  ") + "\n}\n";
    SourceFile file = SourceFile.of("/a.chain", text, new SectionReader(Catalogue.load()));
    Scope scope = new Project(List.of(file)).scope("/a.chain");
    return new PathBuilder(scope).build(scope.track("c").orElseThrow());
  }
}
