package chainwright.app.cli;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Judgements;
import chainwright.app.workspace.Workspace;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.text.TextSpan;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A finding, and where it stands in a file that was named.
 *
 * @param finding the finding
 * @param file the file as the person named it
 * @param document the file's text
 * @param span the stretch, from the document's start
 * @param finder says where the other places of the finding stand
 */
record FoundFinding(
    Finding finding, Path file, DocumentSnapshot document, TextSpan span, Workspace.Finder finder) {

  /**
   * Judges one document.
   *
   * @param file the file as the person named it
   * @param document its text
   * @param workspace the documents that it may import
   * @param judgements judges
   * @return its findings in the order of the text; what lies in an imported file is told there
   */
  static List<FoundFinding> in(
      Path file, DocumentSnapshot document, Workspace workspace, Judgements judgements) {
    List<DocumentSnapshot> documents = new ArrayList<>();
    documents.add(document);
    documents.addAll(workspace.reachableFrom(document));
    Workspace.Finder finder = Workspace.finderIn(documents);
    List<FoundFinding> found = new ArrayList<>();
    for (Finding finding : judgements.of(document, workspace)) {
      finder
          .find(finding.place())
          .filter(at -> at.document().equals(document))
          .ifPresent(at -> found.add(new FoundFinding(finding, file, document, at.span(), finder)));
    }
    found.sort(Comparator.comparingInt(one -> one.span().start()));
    return found;
  }

  /**
   * Returns where it begins.
   *
   * @return the place as people count
   */
  CountedPlace start() {
    return CountedPlace.of(document, span.start());
  }
}
