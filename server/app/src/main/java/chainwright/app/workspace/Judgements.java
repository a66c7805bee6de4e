package chainwright.app.workspace;

import chainwright.engine.judge.Judge;
import chainwright.engine.judge.Judgement;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.syntax.Spread;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Judges documents and remembers the last judgement of each, so that an edit costs the chains that
 * it touches. Safe for use by several threads; whichever writes last is remembered.
 */
public final class Judgements {

  private final Judge judge;
  private final ConcurrentHashMap<DocumentPath, Judgement> last = new ConcurrentHashMap<>();

  /**
   * Remembers nothing yet.
   *
   * @param catalogue the trade's knowledge
   * @param spread how many chains are judged
   */
  public Judgements(Catalogue catalogue, Spread spread) {
    judge = new Judge(catalogue, spread);
  }

  /**
   * Judges a document.
   *
   * @param document the document
   * @param workspace the documents that it may import
   * @return the findings, those of a section together; then the takes that are missing; of what is
   *     no text, only that it is none
   */
  public List<Finding> of(DocumentSnapshot document, Workspace workspace) {
    Optional<Finding> noText = NoText.of(document);
    if (noText.isPresent()) {
      return List.of(noText.get());
    }
    Judgement before = last.getOrDefault(document.path(), Judgement.NONE);
    Judgement now = judge.judge(workspace.projectOf(document), document.file().key(), before);
    last.put(document.path(), now);
    List<Finding> findings = new ArrayList<>(now.findings());
    findings.addAll(MissingTakes.of(document));
    return findings;
  }
}
