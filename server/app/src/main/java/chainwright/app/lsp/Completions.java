package chainwright.app.lsp;

import chainwright.app.assist.Completing;
import chainwright.app.assist.Proposal;
import chainwright.app.assist.Snippet;
import chainwright.app.assist.WrittenLine;
import chainwright.app.workspace.NearbyFiles;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.InsertReplaceEdit;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.InsertTextMode;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Answers what could be written at the caret. */
final class Completions {

  /** What opens the list by itself: a blank, the quote and the slash of a path. */
  static final List<String> TRIGGERS = List.of(" ", "\"", "/");

  private static final int SORT_DIGITS = 10_000;

  private Completions() {}

  static CompletionList answer(CompletionParams params, Request request) {
    int offset = request.offsetOf(params.getPosition());
    SourceFile file = request.document().file();
    int index = file.tree().sectionAt(offset);
    int start = file.tree().startOf(index);
    Optional<WrittenLine> line = WrittenLine.of(file.tree().sections().get(index), offset - start);
    if (line.isEmpty()) {
      return new CompletionList(false, List.of());
    }
    Completing completing =
        new Completing(
            Catalogue.load(),
            request.workspace().projectOf(request.document()).scope(file.key()),
            new NearbyFiles(request.document(), request.workspace()),
            file.sections().get(index).definition(),
            line.get().isAtRule() ? rulesFound(request, offset) : Set.of());
    Completing.Answer answer = completing.at(line.get());
    List<CompletionItem> items = new ArrayList<>();
    for (Proposal proposal : answer.proposals()) {
      CompletionItem item = item(proposal, line.get(), start, request);
      item.setSortText(Integer.toString(SORT_DIGITS + items.size()));
      items.add(item);
    }
    return new CompletionList(!answer.isWhole(), items);
  }

  /** The rules that were found broken on the line of an offset. */
  private static Set<String> rulesFound(Request request, int offset) {
    int line = request.rangeOf(new TextSpan(offset, offset)).getStart().getLine();
    return request.findings().found().stream()
        .filter(found -> request.rangeOf(found.at().span()).getStart().getLine() == line)
        .map(found -> found.finding().code())
        .collect(Collectors.toSet());
  }

  private static CompletionItem item(
      Proposal proposal, WrittenLine line, int start, Request request) {
    CompletionTraits client = request.client().completion();
    CompletionItem item = new CompletionItem(proposal.text());
    item.setKind(kind(proposal.kind()));
    item.setDetail(proposal.detail());
    if (!proposal.paragraphs().isEmpty()) {
      item.setDocumentation(documentation(proposal.paragraphs(), client));
    }
    if (!proposal.filter().equals(proposal.text())) {
      item.setFilterText(proposal.filter());
    }
    String text = proposal.text() + line.tail();
    if (client.takesSnippets() && proposal.snippet().isPresent() && line.isAtEnd()) {
      text = snippet(proposal.snippet().get());
      item.setInsertTextFormat(InsertTextFormat.Snippet);
      if (client.adjustsIndentation()) {
        item.setInsertTextMode(InsertTextMode.AdjustIndentation);
      }
    }
    item.setTextEdit(edit(text, line, start, request));
    return item;
  }

  /** What stands behind the caret of the word is replaced, unless the user prefers to keep it. */
  private static Either<TextEdit, InsertReplaceEdit> edit(
      String text, WrittenLine line, int start, Request request) {
    Range replaced =
        request.rangeOf(new TextSpan(line.typed().start(), line.wordEnd()).plus(start));
    if (!request.client().completion().choosesReplacing()) {
      return Either.forLeft(new TextEdit(replaced, text));
    }
    return Either.forRight(
        new InsertReplaceEdit(text, request.rangeOf(line.typed().plus(start)), replaced));
  }

  private static Either<String, MarkupContent> documentation(
      List<String> paragraphs, CompletionTraits client) {
    return client.readsMarkdown()
        ? Either.forRight(
            new MarkupContent(
                MarkupKind.MARKDOWN,
                String.join("\n\n", paragraphs.stream().map(Completions::escaped).toList())))
        : Either.forLeft(String.join("\n", paragraphs));
  }

  /** Plain words as Markdown; a word in back quotes stays one. */
  private static String escaped(String words) {
    return words.replaceAll("[\\\\*_<>\\[\\]#&]", "\\\\$0");
  }

  private static String snippet(Snippet snippet) {
    StringBuilder text = new StringBuilder();
    int stops = 0;
    for (Snippet.Piece piece : snippet.pieces()) {
      if (piece instanceof Snippet.Fixed fixed) {
        text.append(literal(fixed.text(), ""));
      } else if (piece instanceof Snippet.Stop stop) {
        text.append("${").append(++stops).append(':').append(literal(stop.text(), "}")).append('}');
      } else if (piece instanceof Snippet.Same same) {
        text.append("${").append(same.stop()).append('}');
      } else {
        text.append("$0");
      }
    }
    return text.toString();
  }

  /** A text in a snippet; a brace has a meaning inside a stop only. */
  private static String literal(String text, String special) {
    return text.replaceAll("[\\\\$" + special + "]", "\\\\$0");
  }

  private static CompletionItemKind kind(Proposal.Kind kind) {
    return switch (kind) {
      case STAGE -> CompletionItemKind.Function;
      case WORD -> CompletionItemKind.Keyword;
      case SETTING -> CompletionItemKind.Property;
      case VALUE -> CompletionItemKind.Value;
      case UNIT -> CompletionItemKind.Unit;
      case NAME -> CompletionItemKind.Reference;
      case FILE -> CompletionItemKind.File;
      case FOLDER -> CompletionItemKind.Folder;
    };
  }
}
