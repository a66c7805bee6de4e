package chainwright.app.lsp;

import chainwright.app.workspace.DocumentPath;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Documents;
import chainwright.app.workspace.Judgements;
import chainwright.app.workspace.Workspace;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.syntax.Spread;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.function.Function;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.jsonrpc.CancelChecker;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;

/**
 * One editor's session: its documents, what it can do, what it has set.
 *
 * <p>The thread that reads messages alone writes here, so that an edit is in place before the
 * request that follows it; requests are then worked on by the other threads.
 */
final class Session {

  /** Where the session is in its life. */
  enum Stage {
    /** Nothing but {@code initialize} is answered. */
    NEW,
    /** Everything is answered. */
    RUNNING,
    /** Nothing is answered any more. */
    SHUT_DOWN
  }

  private final CompletableFuture<Documents> documents;
  private final CompletableFuture<Judgements> judgements;
  private final CompletableFuture<Spread> spread;
  private final ExecutorService workers;
  private final Editor editor;
  private volatile Stage stage = Stage.NEW;
  private volatile ClientTraits traits = ClientTraits.of(new Announced(JsonNull.INSTANCE));
  private volatile ClientSettings startSettings = ClientSettings.DEFAULTS;
  private volatile ClientSettings settings = ClientSettings.DEFAULTS;

  /**
   * Begins a session.
   *
   * @param reader reads what documents say; it may still be in the making, the first document waits
   * @param workers work on requests
   * @param editor the other end of the line
   */
  Session(CompletableFuture<SectionReader> reader, ExecutorService workers, Editor editor) {
    this.editor = editor;
    this.documents = reader.thenApply(Documents::new);
    this.judgements = reader.thenApply(made -> new Judgements(made.catalogue(), made.spread()));
    this.spread = reader.thenApply(SectionReader::spread);
    this.workers = workers;
  }

  Documents documents() {
    return documents.join();
  }

  Judgements judgements() {
    return judgements.join();
  }

  Spread spread() {
    return spread.join();
  }

  Editor editor() {
    return editor;
  }

  ClientTraits traits() {
    return traits;
  }

  ClientSettings settings() {
    return settings;
  }

  Stage stage() {
    return stage;
  }

  void begin(ClientTraits announced, JsonElement startOptions) {
    traits = announced;
    stage = Stage.RUNNING;
    configure(startOptions);
    startSettings = settings;
  }

  void shutDown() {
    stage = Stage.SHUT_DOWN;
  }

  boolean isRunning() {
    return stage == Stage.RUNNING;
  }

  /** Takes new settings; what is wrong in them is told to the user and keeps its value. */
  void configure(JsonElement json) {
    ClientSettings.Reading reading = settings.read(json, startSettings);
    settings = reading.settings();
    for (String trouble : reading.troubles()) {
      editor.warn("Chainwright: " + trouble);
    }
  }

  /**
   * Answers a request about a document, on another thread, from the state of this moment. If the
   * document is edited meanwhile, the answer is dropped in favour of {@code ContentModified}.
   */
  <P, R> CompletableFuture<R> answer(
      @Nullable TextDocumentIdentifier asked, P params, Request.Handler<P, R> handler) {
    if (!isRunning()) {
      return CompletableFuture.failedFuture(notRunning());
    }
    if (asked == null || asked.getUri() == null) {
      return CompletableFuture.failedFuture(
          error(ResponseErrorCode.InvalidParams, "`textDocument` must name a document"));
    }
    String uri = asked.getUri();
    Workspace workspace = documents().workspace();
    ClientSettings now = settings;
    return CompletableFutures.computeAsync(
        workers,
        cancel -> {
          Optional<DocumentSnapshot> document = workspace.document(DocumentPath.ofUri(uri));
          if (document.isEmpty()) {
            throw error(
                ResponseErrorCode.InvalidParams, "`" + uri + "` is neither open nor readable");
          }
          Request request =
              new Request(
                  document.get(),
                  workspace,
                  traits,
                  now,
                  judgements(),
                  spread(),
                  whileNewest(document.get(), cancel));
          R result = answered(params, request, handler);
          request.cancel().checkCanceled();
          return result;
        });
  }

  private static <P, R> R answered(P params, Request request, Request.Handler<P, R> handler) {
    try {
      return handler.answer(params, request);
    } catch (NullPointerException e) {
      throw MissingMembers.or(params, e);
    }
  }

  /** Answers a request that is about no one document, on another thread. */
  <R> CompletableFuture<R> answerAcross(Function<Workspace, R> handler) {
    if (!isRunning()) {
      return CompletableFuture.failedFuture(notRunning());
    }
    Workspace workspace = documents().workspace();
    return CompletableFutures.computeAsync(workers, cancel -> handler.apply(workspace));
  }

  private CancelChecker whileNewest(DocumentSnapshot document, CancelChecker cancel) {
    return () -> {
      cancel.checkCanceled();
      if (!documents().isNewest(document)) {
        throw error(
            ResponseErrorCode.ContentModified,
            "`" + document.path().name() + "` was edited meanwhile");
      }
    };
  }

  private ResponseErrorException notRunning() {
    return stage == Stage.NEW
        ? error(ResponseErrorCode.ServerNotInitialized, "`initialize` must come first")
        : error(ResponseErrorCode.InvalidRequest, "the server has been shut down");
  }

  static ResponseErrorException error(ResponseErrorCode code, String message) {
    return new ResponseErrorException(new ResponseError(code, message, null));
  }
}
