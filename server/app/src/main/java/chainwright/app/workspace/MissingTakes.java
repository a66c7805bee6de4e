package chainwright.app.workspace;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Finds the takes that a document names and that are not there. */
public final class MissingTakes {

  private MissingTakes() {}

  /**
   * Looks for the recordings that a document names.
   *
   * @param document the document; one that is no file names none that could be looked for
   * @return a finding for each that is missing, in the order of the text
   */
  static List<Finding> of(DocumentSnapshot document) {
    List<Finding> findings = new ArrayList<>();
    if (document.path().file().isEmpty()) {
      return findings;
    }
    for (Definition definition : document.file().definitions()) {
      if (definition instanceof Definition.Track track) {
        Optional<Declarations.Take> take = track.declarations().take();
        if (take.isPresent() && !isFile(document, take.get().file())) {
          Place place = new Place(track.section(), take.get().fileSpan());
          findings.add(missingTake(take.get().file(), place));
        }
      }
    }
    return findings;
  }

  /**
   * Asks whether a chain of a document names one of some recordings.
   *
   * @param document the document
   * @param files the recordings
   * @return whether its takes may have come or gone with them
   */
  public static boolean names(DocumentSnapshot document, Collection<DocumentPath> files) {
    for (Definition definition : document.file().definitions()) {
      if (definition instanceof Definition.Track track) {
        boolean isNamed =
            track
                .declarations()
                .take()
                .map(take -> DocumentPath.ofKey(document.file().resolve(take.file())))
                .filter(files::contains)
                .isPresent();
        if (isNamed) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean isFile(DocumentSnapshot document, String name) {
    return DocumentPath.ofKey(document.file().resolve(name))
        .file()
        .filter(Files::isRegularFile)
        .isPresent();
  }

  private static Finding missingTake(String name, Place place) {
    return Finding.ofText(
        Fault.MISSING_TAKE,
        place,
        "the take `" + name + "` is not there",
        "Nothing can be measured on a recording that is not there.",
        "Mend the path, which counts from this file's folder, or put the recording there.",
        List.of(),
        List.of());
  }
}
