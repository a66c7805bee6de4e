package chainwright.app.lsp;

import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.SetTraceParams;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;

/** The life of a session: from {@code initialize} to {@code exit}. */
final class ChainServer implements LanguageServer {

  private final Session session;
  private final FindingsPublisher publisher;
  private final TextRequests text;
  private final WorkspaceRequests workspace;
  private final CompletableFuture<Integer> exitCode = new CompletableFuture<>();

  ChainServer(Session session, FindingsPublisher publisher) {
    this.session = session;
    this.publisher = publisher;
    this.text = new TextRequests(session, publisher);
    this.workspace = new WorkspaceRequests(session, publisher);
  }

  @Override
  public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
    if (session.stage() != Session.Stage.NEW) {
      return CompletableFuture.failedFuture(
          Session.error(ResponseErrorCode.InvalidRequest, "`initialize` must come only once"));
    }
    ClientCapabilities announced = params.getCapabilities();
    session.begin(
        ClientTraits.of(announced == null ? new ClientCapabilities() : announced),
        params.getInitializationOptions() instanceof JsonElement json ? json : JsonNull.INSTANCE);
    workspace.begin(folders(params));
    return CompletableFuture.completedFuture(
        new InitializeResult(
            Capabilities.of(session.traits()), new ServerInfo("chainwright", version())));
  }

  @Override
  public void initialized(InitializedParams params) {
    List<Registration> wanted = new ArrayList<>();
    if (session.traits().watchesFiles()) {
      FileSystemWatcher chains = new FileSystemWatcher(Either.forLeft("**/*.chain"));
      wanted.add(
          new Registration(
              "chain-files",
              "workspace/didChangeWatchedFiles",
              new DidChangeWatchedFilesRegistrationOptions(List.of(chains))));
    }
    if (session.traits().watchesSettings()) {
      wanted.add(new Registration("settings", "workspace/didChangeConfiguration"));
    }
    if (!wanted.isEmpty()) {
      var unused = session.client().registerCapability(new RegistrationParams(wanted));
    }
    if (session.traits().pullsSettings()) {
      SettingsPull.start(session, publisher);
    }
  }

  @Override
  public void setTrace(SetTraceParams params) {
    // Messages can be traced in the editor itself.
  }

  @Override
  public CompletableFuture<Object> shutdown() {
    session.shutDown();
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void exit() {
    exitCode.complete(session.stage() == Session.Stage.SHUT_DOWN ? 0 : 1);
  }

  @Override
  public TextDocumentService getTextDocumentService() {
    return text;
  }

  @Override
  public WorkspaceService getWorkspaceService() {
    return workspace;
  }

  /** The code with which the process ends, once the editor has said {@code exit}. */
  CompletableFuture<Integer> exitCode() {
    return exitCode;
  }

  @SuppressWarnings("deprecation") // Older editors send their one folder as `rootUri`.
  private static List<WorkspaceFolder> folders(InitializeParams params) {
    if (params.getWorkspaceFolders() != null) {
      return params.getWorkspaceFolders();
    }
    return params.getRootUri() == null
        ? List.of()
        : List.of(new WorkspaceFolder(params.getRootUri(), ""));
  }

  private static String version() {
    return Optional.ofNullable(ChainServer.class.getPackage().getImplementationVersion())
        .orElse("unreleased");
  }
}
