package chainwright.app.lsp;

import chainwright.notation.format.Formatting;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentOnTypeFormattingParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.TextEdit;

/**
 * {@code textDocument/formatting} and its kin. What the editor says about blanks is left aside: the
 * notation has one layout, and some editors send a tab of eight.
 */
final class Layout {

  private Layout() {}

  static List<TextEdit> answer(DocumentFormattingParams params, Request request) {
    TextSpan whole = new TextSpan(0, request.document().text().length());
    return edits(Formatting.edits(request.document().tree(), whole, request.spread()), request);
  }

  static List<TextEdit> answerRange(DocumentRangeFormattingParams params, Request request) {
    int start = request.offsetOf(params.getRange().getStart());
    int end = request.offsetOf(params.getRange().getEnd());
    TextSpan range = new TextSpan(Math.min(start, end), Math.max(start, end));
    return edits(Formatting.edits(request.document().tree(), range, request.spread()), request);
  }

  static List<TextEdit> answerTyped(DocumentOnTypeFormattingParams params, Request request) {
    int caret = request.offsetOf(params.getPosition());
    return edits(Formatting.indentation(request.document().tree(), caret), request);
  }

  private static List<TextEdit> edits(
      List<chainwright.notation.text.TextEdit> edits, Request request) {
    List<TextEdit> found = new ArrayList<>(edits.size());
    for (chainwright.notation.text.TextEdit edit : edits) {
      found.add(new TextEdit(request.rangeOf(edit.span()), edit.newText()));
    }
    return found;
  }
}
