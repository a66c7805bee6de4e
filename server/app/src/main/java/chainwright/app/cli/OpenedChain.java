package chainwright.app.cli;

import chainwright.app.view.Outline;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Findings;
import chainwright.app.workspace.Judgements;
import chainwright.app.workspace.Workspace;
import chainwright.engine.path.PathBuilder;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A chain of a file that was named, with all that it needs.
 *
 * @param file the file as the person named it
 * @param document its text
 * @param workspace reads what it imports
 * @param inputs the files that it is made of: itself, and those that it imports
 * @param scope what its names mean
 * @param outline the chain
 */
record OpenedChain(
    Path file,
    DocumentSnapshot document,
    Workspace workspace,
    List<Path> inputs,
    Scope scope,
    Outline outline) {

  /** What errors mean for whatever shows a text as far as it can be read. */
  static final String LEFT_OUT = ", and lines that cannot be read are left out";

  OpenedChain {
    inputs = List.copyOf(inputs);
  }

  /**
   * Opens a chain.
   *
   * @param file the file
   * @param chain the name of the chain or bus; null for the only one
   * @return the chain
   * @throws IOException if the file cannot be read, or holds no such chain
   */
  static OpenedChain open(Path file, @Nullable String chain) throws IOException {
    Workspace workspace = emptyWorkspace();
    DocumentSnapshot document = NamedFiles.open(file, workspace);
    Definition.Track track = PlotChoice.track(document.file().definitions(), chain);
    return open(file, document, workspace, track);
  }

  /**
   * Opens every chain of a file.
   *
   * @param file the file
   * @return its chains and buses, in the order of the text; one or more
   * @throws IOException if the file cannot be read, or holds none
   */
  static List<OpenedChain> all(Path file) throws IOException {
    Workspace workspace = emptyWorkspace();
    DocumentSnapshot document = NamedFiles.open(file, workspace);
    List<OpenedChain> opened =
        PlotChoice.tracks(document.file().definitions()).stream()
            .map(track -> open(file, document, workspace, track))
            .toList();
    if (opened.isEmpty()) {
      throw new IOException(PlotChoice.NO_TRACK);
    }
    return opened;
  }

  private static Workspace emptyWorkspace() {
    return Workspace.ofFolders(List.of(), new SectionReader(Catalogue.load()));
  }

  private static OpenedChain open(
      Path file, DocumentSnapshot document, Workspace workspace, Definition.Track track) {
    Scope scope = workspace.projectOf(document).scope(document.file().key());
    List<Path> inputs = new ArrayList<>(List.of(file));
    workspace
        .reachableFrom(document)
        .forEach(imported -> inputs.add(Path.of(imported.path().key())));
    return new OpenedChain(
        file, document, workspace, inputs, scope, Outline.of(track, new PathBuilder(scope)));
  }

  /**
   * Says on which line a place of this file stands.
   *
   * @param place the place
   * @return such as "line 12: "; empty text for a place of another file
   */
  String line(Place place) {
    return Workspace.finderIn(List.of(document))
        .find(place)
        .map(at -> "line " + CountedPlace.of(document, at.span().start()).line() + ": ")
        .orElse("");
  }

  /**
   * Makes sure that an output is none of the inputs.
   *
   * @param output where to write
   * @throws IOException if it is one
   */
  void refuseToWrite(Path output) throws IOException {
    for (Path input : inputs) {
      if (Files.exists(output) && Files.isSameFile(input, output)) {
        throw new IOException(
            "`" + output + "` is what is read here, and is never written to; name another file");
      }
    }
  }

  /**
   * Returns what a reader of the result should know.
   *
   * @param consequence what that means for the result, such as {@link #LEFT_OUT}; empty for nothing
   * @return a sentence, if `check` finds errors anywhere in the text; else nothing
   */
  List<String> troubles(String consequence) {
    SectionReader reader = new SectionReader(Catalogue.load());
    Judgements judgements = new Judgements(reader.catalogue(), reader.spread());
    long errors =
        Findings.of(document, workspace, judgements).found().stream()
            .filter(found -> found.finding().severity() == Severity.ERROR)
            .count();
    return errors == 0
        ? List.of()
        : List.of(
            "chainwright: the text has "
                + errors
                + (errors == 1 ? " error" : " errors")
                + consequence
                + "; see `chainwright check "
                + file
                + "`");
  }
}
