package chainwright.app.lsp;

import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.SyntaxElement;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.syntax.SyntaxNode;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeKind;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Range;

/** {@code textDocument/foldingRange}: blocks, notes in prose, and runs of comments. */
final class Folding {

  private final Request request;
  private final List<FoldingRange> ranges = new ArrayList<>();

  private Folding(Request request) {
    this.request = request;
  }

  static List<FoldingRange> answer(FoldingRangeRequestParams params, Request request) {
    Folding folding = new Folding(request);
    List<Section> sections = request.document().tree().sections();
    for (int i = 0; i < sections.size(); i++) {
      request.cancel().checkCanceled();
      folding.walk(sections.get(i).root(), request.document().tree().startOf(i));
    }
    // Past the editor's limit the longest are kept: they are the ones worth folding.
    return folding.ranges.size() <= request.client().foldingLimit()
        ? folding.ranges
        : folding.ranges.stream()
            .sorted(
                Comparator.comparingInt(
                    (FoldingRange range) -> range.getStartLine() - range.getEndLine()))
            .limit(request.client().foldingLimit())
            .sorted(Comparator.comparingInt(FoldingRange::getStartLine))
            .toList();
  }

  private void walk(SyntaxNode node, int offset) {
    int at = offset;
    int commentsStart = -1;
    int commentsEnd = -1;
    boolean isLineStart = true;
    for (SyntaxElement child : node.children()) {
      int end = at + child.length();
      if (child.kind() == SyntaxKind.COMMENT && isLineStart) {
        commentsStart = commentsStart < 0 ? at : commentsStart;
        commentsEnd = end;
      } else if (!child.kind().isTrivia()) {
        add(commentsStart, commentsEnd, FoldingRangeKind.Comment, false);
        commentsStart = -1;
      }
      isLineStart =
          child.kind() == SyntaxKind.NEWLINE
              || (isLineStart && child.kind() == SyntaxKind.WHITESPACE);
      if (child instanceof SyntaxNode inner) {
        walk(inner, at);
        if (inner.kind() == SyntaxKind.BLOCK) {
          add(at, end, FoldingRangeKind.Region, true);
        } else if (inner.kind() == SyntaxKind.NOTE) {
          add(at, at + inner.text().stripTrailing().length(), FoldingRangeKind.Comment, false);
        }
      }
      at = end;
    }
    add(commentsStart, commentsEnd, FoldingRangeKind.Comment, false);
  }

  private void add(int start, int end, String kind, boolean isClosedByBrace) {
    if (start < 0) {
      return;
    }
    Range range = request.rangeOf(new TextSpan(start, end));
    // An editor that folds whole lines would hide the closing brace with the last one.
    boolean isShortened = isClosedByBrace && request.client().foldsWholeLines();
    int lastLine = range.getEnd().getLine() - (isShortened ? 1 : 0);
    if (lastLine <= range.getStart().getLine()) {
      return;
    }
    FoldingRange folding = new FoldingRange(range.getStart().getLine(), lastLine);
    folding.setKind(kind);
    if (!request.client().foldsWholeLines()) {
      folding.setStartCharacter(range.getStart().getCharacter() + (isClosedByBrace ? 1 : 0));
      folding.setEndCharacter(range.getEnd().getCharacter() - (isClosedByBrace ? 1 : 0));
    }
    ranges.add(folding);
  }
}
