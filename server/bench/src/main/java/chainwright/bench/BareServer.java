package chainwright.bench;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;

/**
 * A server that reads nothing and answers every text with the same finding: what the protocol, its
 * library and Java cost by themselves.
 */
public final class BareServer implements LanguageServer, TextDocumentService {

  private final CompletableFuture<LanguageClient> client = new CompletableFuture<>();

  private BareServer() {}

  /**
   * Serves over standard input and output until the input ends.
   *
   * @param arguments none
   * @throws InterruptedException if the thread is interrupted
   * @throws ExecutionException if reading fails
   */
  public static void main(String[] arguments) throws InterruptedException, ExecutionException {
    BareServer server = new BareServer();
    Launcher<LanguageClient> launcher =
        LSPLauncher.createServerLauncher(server, System.in, System.out);
    server.client.complete(launcher.getRemoteProxy());
    launcher.startListening().get();
  }

  @Override
  public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
    ServerCapabilities capabilities = new ServerCapabilities();
    capabilities.setTextDocumentSync(TextDocumentSyncKind.Incremental);
    return CompletableFuture.completedFuture(new InitializeResult(capabilities));
  }

  @Override
  public CompletableFuture<Object> shutdown() {
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void exit() {
    Runtime.getRuntime().exit(0);
  }

  @Override
  public TextDocumentService getTextDocumentService() {
    return this;
  }

  @Override
  public WorkspaceService getWorkspaceService() {
    return new WorkspaceService() {
      @Override
      public void didChangeConfiguration(org.eclipse.lsp4j.DidChangeConfigurationParams params) {
        // There is nothing to configure.
      }

      @Override
      public void didChangeWatchedFiles(org.eclipse.lsp4j.DidChangeWatchedFilesParams params) {
        // There is nothing to read.
      }
    };
  }

  @Override
  public void didOpen(DidOpenTextDocumentParams params) {
    publish(params.getTextDocument().getUri(), params.getTextDocument().getVersion());
  }

  @Override
  public void didChange(DidChangeTextDocumentParams params) {
    publish(params.getTextDocument().getUri(), params.getTextDocument().getVersion());
  }

  @Override
  public void didClose(DidCloseTextDocumentParams params) {
    // There is nothing to forget.
  }

  @Override
  public void didSave(DidSaveTextDocumentParams params) {
    // There is nothing to keep.
  }

  private void publish(String uri, int version) {
    Range range = new Range(new Position(0, 0), new Position(0, 1));
    client
        .join()
        .publishDiagnostics(
            new PublishDiagnosticsParams(
                uri, List.of(new Diagnostic(range, "always the same")), version));
  }
}
