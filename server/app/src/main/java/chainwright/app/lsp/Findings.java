package chainwright.app.lsp;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Workspace;
import chainwright.notation.diagnostic.Finding;
import java.util.ArrayList;
import java.util.List;

/**
 * The findings of a document, and where everything that they name stands.
 *
 * @param found the findings, in the order of the text
 * @param finder says where a place stands, in the document and in those that it imports
 */
record Findings(List<Found> found, Workspace.Finder finder) {

  /**
   * A finding and its place in the document.
   *
   * @param finding the finding
   * @param at where it stands
   */
  record Found(Finding finding, Workspace.Located at) {}

  Findings {
    found = List.copyOf(found);
  }

  static Findings of(Request request) {
    List<DocumentSnapshot> documents = new ArrayList<>();
    documents.add(request.document());
    documents.addAll(request.workspace().reachableFrom(request.document()));
    Workspace.Finder finder = Workspace.finderIn(documents);
    List<Found> found = new ArrayList<>();
    for (Finding finding : request.judgements().of(request.document(), request.workspace())) {
      finder
          .find(finding.place())
          // What lies in another document is told there.
          .filter(at -> at.document().equals(request.document()))
          .ifPresent(at -> found.add(new Found(finding, at)));
    }
    return new Findings(found, finder);
  }
}
