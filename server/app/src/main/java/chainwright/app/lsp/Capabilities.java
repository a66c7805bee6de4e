package chainwright.app.lsp;

import java.util.List;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.DiagnosticRegistrationOptions;
import org.eclipse.lsp4j.DocumentLinkOptions;
import org.eclipse.lsp4j.DocumentOnTypeFormattingOptions;
import org.eclipse.lsp4j.PositionEncodingKind;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.SemanticTokensServerFull;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.SignatureHelpOptions;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.TextDocumentSyncOptions;
import org.eclipse.lsp4j.WorkspaceFoldersOptions;
import org.eclipse.lsp4j.WorkspaceServerCapabilities;

/** What the server offers to an editor. Each handler has its line here. */
final class Capabilities {

  private Capabilities() {}

  static ServerCapabilities of(ClientTraits client) {
    ServerCapabilities offered = new ServerCapabilities();
    offered.setPositionEncoding(
        switch (client.encoding()) {
          case UTF_8 -> PositionEncodingKind.UTF8;
          case UTF_16 -> PositionEncodingKind.UTF16;
          case UTF_32 -> PositionEncodingKind.UTF32;
        });
    offered.setTextDocumentSync(sync());
    offered.setWorkspace(workspace());
    if (client.pullsDiagnostics()) {
      offered.setDiagnosticProvider(new DiagnosticRegistrationOptions(true, false));
    }
    if (client.takesActions()) {
      offered.setCodeActionProvider(
          new CodeActionOptions(
              List.of(
                  CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, FixActions.FIX_ALL)));
    }
    offered.setHoverProvider(true);
    offered.setDefinitionProvider(true);
    offered.setReferencesProvider(true);
    offered.setDocumentHighlightProvider(true);
    if (client.preparesRenames()) {
      offered.setRenameProvider(new RenameOptions(true));
    } else {
      offered.setRenameProvider(true);
    }
    offered.setDocumentLinkProvider(new DocumentLinkOptions(false));
    offered.setWorkspaceSymbolProvider(true);
    offered.setInlayHintProvider(true);
    offered.setSignatureHelpProvider(new SignatureHelpOptions(List.of(" "), List.of(" ")));
    offered.setCompletionProvider(new CompletionOptions(false, Completions.TRIGGERS));
    offered.setDocumentFormattingProvider(true);
    offered.setDocumentRangeFormattingProvider(true);
    offered.setDocumentOnTypeFormattingProvider(
        new DocumentOnTypeFormattingOptions("}", List.of("\n")));
    if (client.coloursTokens()) {
      SemanticTokensWithRegistrationOptions tokens =
          new SemanticTokensWithRegistrationOptions(Tokens.LEGEND);
      tokens.setFull(new SemanticTokensServerFull(true));
      tokens.setRange(true);
      offered.setSemanticTokensProvider(tokens);
    }
    offered.setDocumentSymbolProvider(true);
    offered.setFoldingRangeProvider(true);
    offered.setSelectionRangeProvider(true);
    return offered;
  }

  private static TextDocumentSyncOptions sync() {
    TextDocumentSyncOptions sync = new TextDocumentSyncOptions();
    sync.setOpenClose(true);
    sync.setChange(TextDocumentSyncKind.Incremental);
    return sync;
  }

  private static WorkspaceServerCapabilities workspace() {
    WorkspaceFoldersOptions folders = new WorkspaceFoldersOptions();
    folders.setSupported(true);
    folders.setChangeNotifications(true);
    return new WorkspaceServerCapabilities(folders);
  }
}
