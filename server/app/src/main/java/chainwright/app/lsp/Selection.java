package chainwright.app.lsp;

import chainwright.notation.syntax.SyntaxElement;
import chainwright.notation.syntax.SyntaxNode;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.SelectionRange;
import org.eclipse.lsp4j.SelectionRangeParams;

/** {@code textDocument/selectionRange}: word, quantity, statement, block, chain, file. */
final class Selection {

  private Selection() {}

  static List<SelectionRange> answer(SelectionRangeParams params, Request request) {
    return params.getPositions().stream().map(position -> at(position, request)).toList();
  }

  private static SelectionRange at(Position position, Request request) {
    SyntaxTree tree = request.document().tree();
    int offset = request.offsetOf(position);
    List<TextSpan> spans = new ArrayList<>();
    spans.add(new TextSpan(0, tree.text().length()));
    int section = tree.sectionAt(offset);
    descend(tree.sections().get(section).root(), tree.startOf(section), offset, tree.text(), spans);
    SelectionRange selection = new SelectionRange(request.rangeOf(spans.get(0)), null);
    for (TextSpan span : spans.subList(1, spans.size())) {
      selection = new SelectionRange(request.rangeOf(span), selection);
    }
    return selection;
  }

  private static void descend(
      SyntaxNode node, int start, int offset, String text, List<TextSpan> spans) {
    add(trimmed(TextSpan.ofLength(start, node.length()), text), offset, spans);
    int at = start;
    for (SyntaxElement child : node.children()) {
      int end = at + child.length();
      // A caret between a word and a blank means the word.
      boolean isMeant =
          at <= offset && (offset < end || (offset == end && !child.kind().isTrivia()));
      if (isMeant && !child.kind().isTrivia()) {
        if (child instanceof SyntaxNode inner) {
          descend(inner, at, offset, text, spans);
        } else {
          add(new TextSpan(at, end), offset, spans);
        }
        return;
      }
      at = end;
    }
  }

  private static void add(TextSpan span, int offset, List<TextSpan> spans) {
    TextSpan outer = spans.get(spans.size() - 1);
    if (span.isTouchedBy(offset) && outer.contains(span) && !outer.equals(span)) {
      spans.add(span);
    }
  }

  private static TextSpan trimmed(TextSpan span, String text) {
    int start = span.start();
    int end = span.end();
    while (start < end && Character.isWhitespace(text.charAt(start))) {
      start++;
    }
    while (end > start && Character.isWhitespace(text.charAt(end - 1))) {
      end--;
    }
    return new TextSpan(start, end);
  }
}
