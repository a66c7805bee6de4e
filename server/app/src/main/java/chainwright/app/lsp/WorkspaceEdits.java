package chainwright.app.lsp;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Workspace;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.TextDocumentEdit;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Edits of one or several documents in the protocol's words. */
final class WorkspaceEdits {

  private WorkspaceEdits() {}

  /**
   * Translates edits. Where the editor can, each document is named with its version, so that an
   * edit is refused rather than put into a text it was not made for.
   *
   * @return the edit, or empty if a place lies in no known document
   */
  static Optional<WorkspaceEdit> of(
      List<PlacedEdit> edits, Workspace.Finder finder, Request request) {
    Map<DocumentSnapshot, List<TextEdit>> byDocument = new LinkedHashMap<>();
    for (PlacedEdit placed : edits) {
      Optional<Workspace.Located> at =
          finder.find(new Place(placed.section(), placed.edit().span()));
      if (at.isEmpty()) {
        return Optional.empty();
      }
      DocumentSnapshot document = at.get().document();
      byDocument
          .computeIfAbsent(document, first -> new ArrayList<>())
          .add(new TextEdit(request.rangeOf(document, at.get().span()), placed.edit().newText()));
    }
    return Optional.of(
        request.client().versionsEdits() ? versioned(byDocument) : plain(byDocument));
  }

  private static WorkspaceEdit versioned(Map<DocumentSnapshot, List<TextEdit>> byDocument) {
    WorkspaceEdit edit = new WorkspaceEdit();
    edit.setDocumentChanges(
        byDocument.entrySet().stream()
            .map(
                entry -> new TextDocumentEdit(identifier(entry.getKey()), either(entry.getValue())))
            .map(Either::<TextDocumentEdit, org.eclipse.lsp4j.ResourceOperation>forLeft)
            .toList());
    return edit;
  }

  private static VersionedTextDocumentIdentifier identifier(DocumentSnapshot document) {
    VersionedTextDocumentIdentifier identifier = new VersionedTextDocumentIdentifier();
    identifier.setUri(document.uri());
    identifier.setVersion(document.version().orElse(null));
    return identifier;
  }

  private static List<Either<TextEdit, org.eclipse.lsp4j.SnippetTextEdit>> either(
      List<TextEdit> edits) {
    return edits.stream()
        .map(Either::<TextEdit, org.eclipse.lsp4j.SnippetTextEdit>forLeft)
        .toList();
  }

  private static WorkspaceEdit plain(Map<DocumentSnapshot, List<TextEdit>> byDocument) {
    Map<String, List<TextEdit>> changes = new LinkedHashMap<>();
    byDocument.forEach((document, edits) -> changes.put(document.uri(), edits));
    return new WorkspaceEdit(changes);
  }
}
