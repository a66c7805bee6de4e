package chainwright.app.lsp;

import chainwright.app.assist.Completing;
import chainwright.app.assist.Proposal;
import chainwright.app.assist.WrittenLine;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Answers what could be written at the caret. */
final class Completions {

  private static final int SORT_DIGITS = 10_000;

  private Completions() {}

  static List<CompletionItem> answer(CompletionParams params, Request request) {
    int offset = request.offsetOf(params.getPosition());
    SourceFile file = request.document().file();
    int index = file.tree().sectionAt(offset);
    int start = file.tree().startOf(index);
    Optional<WrittenLine> line =
        WrittenLine.of(file.tree().sections().get(index).text(), offset - start);
    if (line.isEmpty()) {
      return List.of();
    }
    Completing completing =
        new Completing(
            Catalogue.load(), request.workspace().projectOf(request.document()).scope(file.key()));
    Range range = request.rangeOf(new TextSpan(offset - line.get().prefixLength(), offset));
    List<CompletionItem> items = new ArrayList<>();
    for (Proposal proposal : completing.at(line.get())) {
      CompletionItem item = new CompletionItem(proposal.text());
      item.setKind(kind(proposal.kind()));
      item.setDetail(proposal.detail());
      if (!proposal.documentation().isEmpty()) {
        item.setDocumentation(proposal.documentation());
      }
      item.setSortText(Integer.toString(SORT_DIGITS + items.size()));
      item.setTextEdit(Either.forLeft(new TextEdit(range, proposal.text())));
      items.add(item);
    }
    return items;
  }

  private static CompletionItemKind kind(Proposal.Kind kind) {
    return switch (kind) {
      case STAGE -> CompletionItemKind.Function;
      case WORD -> CompletionItemKind.Keyword;
      case SETTING -> CompletionItemKind.Property;
      case VALUE -> CompletionItemKind.Value;
      case NAME -> CompletionItemKind.Reference;
    };
  }
}
