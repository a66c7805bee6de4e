package chainwright.app.lsp;

import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** {@code textDocument/documentSymbol}: the outline, from the text alone. */
final class Outline {

  /** A longer outline freezes typing in some editors, so inner lines are left out past this. */
  private static final int MAX_INNER = 4_000;

  private static final int MAX_DETAIL = 80;

  private final Request request;
  private int inner;

  private Outline(Request request) {
    this.request = request;
  }

  static List<Either<SymbolInformation, DocumentSymbol>> answer(
      DocumentSymbolParams params, Request request) {
    Outline outline = new Outline(request);
    List<DocumentSymbol> symbols = new ArrayList<>();
    List<Section> sections = request.document().tree().sections();
    for (int i = 0; i < sections.size(); i++) {
      request.cancel().checkCanceled();
      symbols.addAll(
          outline.symbols(Block.of(sections.get(i)), request.document().tree().startOf(i), true));
    }
    return symbols.stream().map(symbol -> shaped(symbol, request)).toList();
  }

  @SuppressWarnings("deprecation") // Editors without trees know nothing newer.
  private static Either<SymbolInformation, DocumentSymbol> shaped(
      DocumentSymbol symbol, Request request) {
    if (request.client().nestsSymbols()) {
      return Either.forRight(symbol);
    }
    return Either.forLeft(
        new SymbolInformation(
            symbol.getName(),
            symbol.getKind(),
            new Location(request.document().uri(), symbol.getRange())));
  }

  private List<DocumentSymbol> symbols(Block block, int sectionStart, boolean isTop) {
    List<DocumentSymbol> symbols = new ArrayList<>();
    for (Block.Member member : block.members()) {
      if (member instanceof Block.Line line && (isTop || ++inner <= MAX_INNER)) {
        line.statement()
            .head()
            .ifPresent(head -> symbols.add(symbol(line.statement(), head, sectionStart, isTop)));
      }
    }
    return symbols;
  }

  private DocumentSymbol symbol(
      Statement statement, Item.Word head, int sectionStart, boolean isTop) {
    List<Item> items = statement.items();
    Optional<Item.Word> name =
        isTop && !items.isEmpty() && items.get(0) instanceof Item.Word word
            ? Optional.of(word)
            : Optional.empty();
    TextSpan line = statement.lineSpan();
    TextSpan selected = name.map(Item.Word::span).orElse(isTop ? line : head.span());
    DocumentSymbol symbol =
        new DocumentSymbol(
            name.map(word -> head.text() + " " + word.text()).orElse(head.text()),
            kind(head.text(), isTop, statement.block().isPresent()),
            request.rangeOf(statement.span().plus(sectionStart)),
            request.rangeOf(selected.plus(sectionStart)));
    int detailStart = name.map(word -> word.span().end()).orElse(head.span().end()) + sectionStart;
    symbol.setDetail(detail(detailStart, line.end() + sectionStart));
    statement.block().ifPresent(block -> symbol.setChildren(symbols(block, sectionStart, false)));
    return symbol;
  }

  private String detail(int start, int end) {
    String text = request.document().text().substring(start, Math.max(start, end)).strip();
    String plain = text.replaceAll("\\s+", " ");
    return plain.length() <= MAX_DETAIL ? plain : plain.substring(0, MAX_DETAIL - 1) + "…";
  }

  private static SymbolKind kind(String head, boolean isTop, boolean hasBlock) {
    if (!isTop) {
      return hasBlock ? SymbolKind.Method : SymbolKind.Field;
    }
    return switch (head.toLowerCase(Locale.ROOT)) {
      case "import" -> SymbolKind.File;
      case "session" -> SymbolKind.Namespace;
      case "preset" -> SymbolKind.Package;
      case "bus" -> SymbolKind.Interface;
      case "chain" -> SymbolKind.Class;
      default -> SymbolKind.Field;
    };
  }
}
