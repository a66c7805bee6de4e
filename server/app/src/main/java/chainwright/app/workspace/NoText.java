package chainwright.app.workspace;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.fault.Fault;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.BinaryText;
import chainwright.notation.text.TextSpan;
import java.util.List;
import java.util.Optional;

/** Finds a document that is no text, about which nothing else is worth saying. */
final class NoText {

  private NoText() {}

  /**
   * Looks at the beginning of a document.
   *
   * @param document the document
   * @return the finding, or empty if it is a text
   */
  static Optional<Finding> of(DocumentSnapshot document) {
    return BinaryText.find(document.text()).map(span -> finding(place(document, span)));
  }

  private static Place place(DocumentSnapshot document, TextSpan span) {
    List<Section> sections = document.tree().sections();
    int at = 0;
    while (at + 1 < sections.size() && document.tree().startOf(at + 1) <= span.start()) {
      at++;
    }
    return new Place(sections.get(at), span.plus(-document.tree().startOf(at)));
  }

  private static Finding finding(Place place) {
    return Finding.ofText(
        Fault.NOT_TEXT,
        place,
        "this is no text, but perhaps a recording or a picture",
        "It holds characters that no text has, so nothing in it is read.",
        "Open a chain file. A recording is named by `take` in one, and measured by `chainwright"
            + " measure`.",
        List.of(),
        List.of());
  }
}
