package chainwright.app.lsp;

import chainwright.app.assist.Names;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Workspace;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextEdit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;

/** Answers where a name is defined and used, and renames it everywhere. */
final class Naming {

  private static final Pattern NAME = Pattern.compile("[\\p{L}][\\p{L}\\p{N}-]*");

  private final Request request;
  private final List<SourceFile> files = new ArrayList<>();
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
    documents.values().forEach(document -> files.add(document.file()));
    this.finder = Workspace.finderIn(documents.values());
  }

  static List<Location> define(DefinitionParams params, Request request) {
    Naming naming = new Naming(request);
    return naming
        .at(request.offsetOf(params.getPosition()))
        .map(found -> naming.locations(Names.definitions(found, naming.files)))
        .orElse(List.of());
  }

  static List<Location> refer(ReferenceParams params, Request request) {
    Naming naming = new Naming(request);
    boolean withDefinition =
        params.getContext() == null || params.getContext().isIncludeDeclaration();
    return naming
        .at(request.offsetOf(params.getPosition()))
        .map(
            found -> {
              List<Place> places = new ArrayList<>();
              if (withDefinition) {
                places.addAll(Names.definitions(found, naming.files));
              }
              places.addAll(Names.uses(found, naming.files));
              return naming.locations(places);
            })
        .orElse(List.of());
  }

  static Optional<WorkspaceEdit> rename(RenameParams params, Request request) {
    String newName = params.getNewName();
    if (!NAME.matcher(newName).matches()) {
      throw Session.error(
          ResponseErrorCode.InvalidParams,
          "a name is letters, digits and hyphens and begins with a letter, but was `"
              + newName
              + "`");
    }
    Naming naming = new Naming(request);
    return naming
        .at(request.offsetOf(params.getPosition()))
        .flatMap(
            found -> {
              List<Place> places = new ArrayList<>(Names.definitions(found, naming.files));
              places.addAll(Names.uses(found, naming.files));
              List<PlacedEdit> edits =
                  places.stream()
                      .map(
                          place ->
                              new PlacedEdit(place.section(), new TextEdit(place.span(), newName)))
                      .toList();
              return WorkspaceEdits.of(edits, naming.finder, request);
            });
  }

  private Optional<Names.Found> at(int offset) {
    SourceFile file = request.document().file();
    int index = file.tree().sectionAt(offset);
    return file.sections()
        .get(index)
        .definition()
        .flatMap(definition -> Names.at(definition, offset - file.tree().startOf(index)));
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
