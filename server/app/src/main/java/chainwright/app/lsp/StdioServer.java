package chainwright.app.lsp;

import chainwright.app.workspace.TwoThreads;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;

/** Serves one editor over a pair of streams. */
public final class StdioServer {

  private StdioServer() {}

  /**
   * Serves until the editor says {@code exit} or its stream ends.
   *
   * @param in what the editor sends
   * @param out what goes to the editor; nothing else may write to it
   * @return the code with which the process should end: 0 after a proper shutdown, else 1
   */
  public static int serve(InputStream in, OutputStream out) {
    ExecutorService workers = Executors.newFixedThreadPool(2, StdioServer::daemon);
    ExecutorService publishing = Executors.newSingleThreadExecutor(StdioServer::daemon);
    ExecutorService helper = Executors.newSingleThreadExecutor(StdioServer::daemon);
    ExecutorService reader = Executors.newSingleThreadExecutor(StdioServer::daemon);
    // The catalogue is read while the protocol is set up.
    CompletableFuture<SectionReader> reading =
        CompletableFuture.supplyAsync(
            () -> new SectionReader(Catalogue.load(), new TwoThreads(helper)), workers);
    Session session = new Session(reading, workers);
    ChainServer server = new ChainServer(session, new FindingsPublisher(session, publishing));
    Launcher<LanguageClient> launcher =
        new Launcher.Builder<LanguageClient>()
            .setLocalService(server)
            .setRemoteInterface(LanguageClient.class)
            .setInput(in)
            .setOutput(out)
            .setExecutorService(reader)
            .setExceptionHandler(StdioServer::error)
            .create();
    session.connect(launcher.getRemoteProxy());
    Future<?> listening = launcher.startListening();
    CompletableFuture<Integer> ended = server.exitCode();
    // The reader's only thread is free again when the editor's stream has ended.
    reader.execute(() -> ended.complete(1));
    try {
      return ended.join();
    } finally {
      listening.cancel(true);
      workers.shutdownNow();
      publishing.shutdownNow();
      helper.shutdownNow();
      reader.shutdownNow();
    }
  }

  /** A method that the protocol knows and this server does not offer fails before any work. */
  private static ResponseError error(Throwable thrown) {
    return thrown instanceof UnsupportedOperationException
        ? new ResponseError(ResponseErrorCode.MethodNotFound, "the method is not offered", null)
        : RemoteEndpoint.DEFAULT_EXCEPTION_HANDLER.apply(thrown);
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "chainwright");
    thread.setDaemon(true);
    return thread;
  }
}
