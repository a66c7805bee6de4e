package chainwright.app.workspace;

import chainwright.notation.diagnostic.Finding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The findings of a document, and where everything that they name stands. The editor and the
 * command line both read them here, so that they find the same.
 *
 * @param found the findings, in the order of the text
 * @param finder says where a place stands, in the document and in those that it imports
 */
public record Findings(List<Found> found, Workspace.Finder finder) {

  /**
   * A finding and its place in the document.
   *
   * @param finding the finding
   * @param at where it stands
   */
  public record Found(Finding finding, Workspace.Located at) {}

  /**
   * Copies the list.
   *
   * @param found the findings
   * @param finder says where a place stands
   */
  public Findings {
    found = List.copyOf(found);
  }

  /**
   * Judges a document.
   *
   * @param document the document
   * @param workspace the documents that it may import
   * @param judgements judges
   * @return what is found in it; what lies in an imported document is told there
   */
  public static Findings of(DocumentSnapshot document, Workspace workspace, Judgements judgements) {
    List<DocumentSnapshot> documents = new ArrayList<>();
    documents.add(document);
    documents.addAll(workspace.reachableFrom(document));
    Workspace.Finder finder = Workspace.finderIn(documents);
    List<Found> found = new ArrayList<>();
    for (Finding finding : judgements.of(document, workspace)) {
      finder
          .find(finding.place())
          .filter(at -> at.document().equals(document))
          .ifPresent(at -> found.add(new Found(finding, at)));
    }
    found.sort(Comparator.comparingInt(one -> one.at().span().start()));
    return new Findings(found, finder);
  }
}
