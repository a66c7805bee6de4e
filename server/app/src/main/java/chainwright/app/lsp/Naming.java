package chainwright.app.lsp;

import chainwright.app.assist.Names;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Workspace;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.lowering.Kebab;
import chainwright.notation.lowering.Vocabulary;
import chainwright.notation.project.Project;
import chainwright.notation.text.TextEdit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;

/** Answers where a name is given and used, and renames it everywhere. */
final class Naming {

  private final Request request;
  private final Names names;
  private final Workspace.Finder finder;

  private Naming(Request request) {
    this.request = request;
    Map<String, DocumentSnapshot> documents = new LinkedHashMap<>();
    documents.put(request.document().file().key(), request.document());
    request
        .workspace()
        .reachableFrom(request.document())
        .forEach(document -> documents.putIfAbsent(document.file().key(), document));
    request
        .workspace()
        .documents()
        .forEach(document -> documents.putIfAbsent(document.file().key(), document));
    this.names =
        new Names(new Project(documents.values().stream().map(DocumentSnapshot::file).toList()));
    this.finder = Workspace.finderIn(documents.values());
  }

  static List<Location> define(DefinitionParams params, Request request) {
    Naming naming = new Naming(request);
    return naming
        .at(params.getPosition())
        .flatMap(naming.names::definition)
        .map(place -> naming.locations(List.of(place)))
        .orElse(List.of());
  }

  static List<Location> refer(ReferenceParams params, Request request) {
    Naming naming = new Naming(request);
    boolean withDefinition =
        params.getContext() == null || params.getContext().isIncludeDeclaration();
    return naming
        .at(params.getPosition())
        .map(
            found ->
                naming.locations(
                    withDefinition ? naming.mentions(found) : naming.names.uses(found)))
        .orElse(List.of());
  }

  /** Answers which word a rename would change; nothing where none can be renamed. */
  static Optional<PrepareRenameResult> prepare(PrepareRenameParams params, Request request) {
    // What the document sees is enough to know what stands under the caret.
    Names names = new Names(request.workspace().projectOf(request.document()));
    Workspace.Finder finder = Workspace.finderIn(List.of(request.document()));
    return names
        .at(request.document().file(), request.offsetOf(params.getPosition()))
        .flatMap(
            found ->
                finder
                    .find(new Place(found.within().section(), found.span()))
                    .map(at -> new PrepareRenameResult(request.rangeOf(at.span()), found.text())));
  }

  static Optional<WorkspaceEdit> rename(RenameParams params, Request request) {
    String newName = params.getNewName();
    if (!Kebab.isWellFormed(newName)) {
      throw refused(
          "a name is lower-case words of letters and digits joined by hyphens, such as `hull-guard`,"
              + " but was `"
              + newName
              + "`");
    }
    Naming naming = new Naming(request);
    Optional<Names.Found> found = naming.at(params.getPosition());
    found
        .flatMap(name -> meansSomethingElse(name.kind(), newName))
        .ifPresent(
            why -> {
              throw refused("`" + newName + "` is " + why + "; choose another name");
            });
    found
        .flatMap(name -> naming.names.bearer(name, newName))
        .flatMap(naming.finder::find)
        .ifPresent(
            at -> {
              throw refused(
                  "the name `"
                      + newName
                      + "` is taken in "
                      + at.document().path().name()
                      + ", line "
                      + (request.rangeOf(at.document(), at.span()).getStart().getLine() + 1));
            });
    return found.flatMap(
        name ->
            WorkspaceEdits.of(
                naming.mentions(name).stream()
                    .map(
                        place ->
                            new PlacedEdit(place.section(), new TextEdit(place.span(), newName)))
                    .toList(),
                naming.finder,
                request));
  }

  /** Says what a name would be taken for where it is used. */
  private static Optional<String> meansSomethingElse(Names.Kind kind, String name) {
    if (kind == Names.Kind.TRACK && Catalogue.load().source(name).isPresent()) {
      return Optional.of("a kind of source, and `spill " + name + "` would mean that");
    }
    return Vocabulary.find(name)
        .filter(
            word -> word.place() == Vocabulary.Place.TOP || word.place() == Vocabulary.Place.CLAUSE)
        .map(word -> "a reserved word: " + word.says());
  }

  private static RuntimeException refused(String why) {
    return Session.error(ResponseErrorCode.InvalidParams, why);
  }

  private Optional<Names.Found> at(Position position) {
    return names.at(request.document().file(), request.offsetOf(position));
  }

  private List<Place> mentions(Names.Found found) {
    List<Place> places = new ArrayList<>();
    names.definition(found).ifPresent(places::add);
    places.addAll(names.uses(found));
    return places;
  }

  private List<Location> locations(List<Place> places) {
    List<Location> locations = new ArrayList<>();
    for (Place place : places) {
      finder
          .find(place)
          .ifPresent(
              at ->
                  locations.add(
                      new Location(
                          at.document().uri(), request.rangeOf(at.document(), at.span()))));
    }
    return locations;
  }
}
