package chainwright.app.lsp;

import chainwright.app.workspace.DocumentPath;
import com.google.gson.JsonElement;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.WorkspaceService;

/** Messages about everything that is not one document. */
final class WorkspaceRequests implements WorkspaceService {

  private final Session session;
  private final FindingsPublisher publisher;
  private final List<WorkspaceFolder> folders = new ArrayList<>();

  WorkspaceRequests(Session session, FindingsPublisher publisher) {
    this.session = session;
    this.publisher = publisher;
  }

  /** Takes the folders of the editor's first message. */
  void begin(List<WorkspaceFolder> first) {
    folders.addAll(first);
    takeFolders();
  }

  @Override
  public void didChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams params) {
    folders.removeAll(params.getEvent().getRemoved());
    folders.addAll(params.getEvent().getAdded());
    takeFolders();
  }

  @Override
  public void didChangeConfiguration(DidChangeConfigurationParams params) {
    if (session.traits().pullsSettings()) {
      SettingsPull.start(session, publisher);
    } else if (params.getSettings() instanceof JsonElement json) {
      session.configure(json);
      publisher.changedEverything();
    }
  }

  @Override
  public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
    publisher.changedOnDisk(
        params.getChanges().stream().map(event -> DocumentPath.ofUri(event.getUri())).toList());
  }

  @Override
  public CompletableFuture<
          Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>>
      symbol(WorkspaceSymbolParams params) {
    if (params.getQuery() == null) {
      return CompletableFuture.failedFuture(
          Session.error(ResponseErrorCode.InvalidParams, "`params.query` is missing"));
    }
    return session
        .answerAcross(
            workspace ->
                WorkspaceSymbols.answer(params.getQuery(), workspace, session.traits().encoding()))
        .thenApply(Either::forRight);
  }

  @Override
  public CompletableFuture<Object> executeCommand(ExecuteCommandParams params) {
    if (!LivePlots.COMMAND.equals(params.getCommand())) {
      return CompletableFuture.failedFuture(
          Session.error(
              ResponseErrorCode.InvalidParams,
              "there is no command `" + params.getCommand() + "`"));
    }
    return LivePlots.parse(params.getArguments())
        .map(
            asked ->
                session
                    .answer(asked.textDocument(), asked, LivePlots::answer)
                    .thenApply(found -> (Object) found.orElse(null)))
        .orElseGet(
            () ->
                CompletableFuture.failedFuture(
                    Session.error(
                        ResponseErrorCode.InvalidParams,
                        "the argument must be an object with `textDocument` and `position`, and"
                            + " may have a `theme`")));
  }

  private void takeFolders() {
    List<Path> paths =
        folders.stream()
            .flatMap(folder -> DocumentPath.ofUri(folder.getUri()).file().stream())
            .toList();
    session.documents().setFolders(paths);
  }
}
