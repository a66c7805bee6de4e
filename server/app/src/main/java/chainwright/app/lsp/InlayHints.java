package chainwright.app.lsp;

import chainwright.app.assist.Hint;
import chainwright.app.assist.Hinting;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.util.List;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintKind;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/**
 * {@code textDocument/inlayHint}, of the visible part. The tooltips come with the answer: they cost
 * less than asking for each would.
 */
final class InlayHints {

  private InlayHints() {}

  static List<InlayHint> answer(InlayHintParams params, Request request) {
    int start = request.offsetOf(params.getRange().getStart());
    int end = request.offsetOf(params.getRange().getEnd());
    SourceFile file = request.document().file();
    Hinting hinting =
        new Hinting(
            request.workspace().projectOf(request.document()).scope(file.key()),
            request.settings().hints());
    return hinting.in(file, new TextSpan(Math.min(start, end), Math.max(start, end))).stream()
        .map(hint -> translated(hint, request))
        .toList();
  }

  private static InlayHint translated(Hint hint, Request request) {
    TextSpan place = new TextSpan(hint.offset(), hint.offset());
    Position position = request.rangeOf(place).getStart();
    InlayHint made = new InlayHint(position, Either.forLeft(hint.label()));
    made.setTooltip(new MarkupContent(MarkupKind.MARKDOWN, hint.tooltip()));
    made.setPaddingLeft(true);
    if (hint.kind() == Hint.Kind.OMITTED) {
      made.setKind(InlayHintKind.Parameter);
    }
    if (!hint.insertion().isEmpty()) {
      made.setTextEdits(List.of(new TextEdit(request.rangeOf(place), hint.insertion())));
    }
    return made;
  }
}
