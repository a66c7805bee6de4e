package chainwright.app.cli;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Findings;
import chainwright.app.workspace.Workspace;
import chainwright.notation.diagnostic.Place;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A file that was named, with what is found in it.
 *
 * @param file the file as the person named it
 * @param document its text
 * @param findings what is found in it
 */
record CheckedFile(Path file, DocumentSnapshot document, Findings findings) {

  /**
   * Finds where a place stands.
   *
   * @param place a place of this file or of one that it imports
   * @return its document and stretch
   */
  Optional<Workspace.Located> find(Place place) {
    return findings.finder().find(place);
  }

  /** Asks whether a stretch lies in this file. */
  boolean holds(Workspace.Located at) {
    return at.document().equals(document);
  }
}
