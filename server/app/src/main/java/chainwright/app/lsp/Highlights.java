package chainwright.app.lsp;

import chainwright.app.assist.Highlighting;
import chainwright.app.assist.Names;
import java.util.List;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightKind;
import org.eclipse.lsp4j.DocumentHighlightParams;

/** {@code textDocument/documentHighlight}: the mentions of a name, or the brace's partner. */
final class Highlights {

  private Highlights() {}

  static List<DocumentHighlight> answer(DocumentHighlightParams params, Request request) {
    Names names = new Names(request.workspace().projectOf(request.document()));
    int offset = request.offsetOf(params.getPosition());
    return Highlighting.at(names, request.document().file(), offset).stream()
        .map(mark -> new DocumentHighlight(request.rangeOf(mark.span()), kind(mark.kind())))
        .toList();
  }

  private static DocumentHighlightKind kind(Highlighting.Kind kind) {
    return switch (kind) {
      case DEFINITION -> DocumentHighlightKind.Write;
      case USE -> DocumentHighlightKind.Read;
      case BRACE -> DocumentHighlightKind.Text;
    };
  }
}
