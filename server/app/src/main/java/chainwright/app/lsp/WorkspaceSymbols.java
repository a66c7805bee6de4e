package chainwright.app.lsp;

import chainwright.app.assist.Symbols;
import chainwright.app.workspace.DocumentPath;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.PositionEncoding;
import chainwright.app.workspace.Workspace;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** {@code workspace/symbol}: chains, buses, presets and sessions of all files at hand. */
final class WorkspaceSymbols {

  /** A longer list is not read to its end. */
  private static final int MOST = 200;

  private WorkspaceSymbols() {}

  static List<WorkspaceSymbol> answer(
      String query, Workspace workspace, PositionEncoding encoding) {
    Collection<DocumentSnapshot> documents = workspace.documents();
    Workspace.Finder finder = Workspace.finderIn(documents);
    List<WorkspaceSymbol> symbols = new ArrayList<>();
    for (Symbols.Symbol found :
        Symbols.find(documents.stream().map(DocumentSnapshot::file).toList(), query, MOST)) {
      finder
          .find(found.place())
          .ifPresent(
              at ->
                  symbols.add(
                      new WorkspaceSymbol(
                          found.name(),
                          kind(found.kind()),
                          Either.forLeft(
                              new Location(
                                  at.document().uri(),
                                  Request.rangeOf(at.document(), at.span(), encoding))),
                          container(found))));
    }
    return symbols;
  }

  private static String container(Symbols.Symbol symbol) {
    String file = DocumentPath.ofKey(symbol.file()).name();
    return symbol.title().isEmpty() ? file : symbol.title() + ", " + file;
  }

  /** As in the outline. */
  private static SymbolKind kind(Symbols.Kind kind) {
    return switch (kind) {
      case CHAIN -> SymbolKind.Class;
      case BUS -> SymbolKind.Interface;
      case PRESET -> SymbolKind.Package;
      case SESSION -> SymbolKind.Namespace;
    };
  }
}
