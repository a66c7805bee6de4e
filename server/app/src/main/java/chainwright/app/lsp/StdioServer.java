package chainwright.app.lsp;

import chainwright.app.lsp.wire.Connection;
import chainwright.app.lsp.wire.Json;
import chainwright.app.workspace.TwoThreads;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ThreadFactory;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.TextEdit;

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
    ThreadFactory daemons = StdioServer::daemon;
    ExecutorService workers = Executors.newFixedThreadPool(2, daemons);
    ExecutorService publishing = Executors.newSingleThreadExecutor(daemons);
    ExecutorService helper = Executors.newSingleThreadExecutor(daemons);
    ExecutorService reader = Executors.newSingleThreadExecutor(daemons);
    // The catalogue is read while the protocol is set up.
    CompletableFuture<SectionReader> reading =
        CompletableFuture.supplyAsync(
            () -> new SectionReader(Catalogue.load(), new TwoThreads(helper)), workers);
    var unused = reading.thenAcceptAsync(made -> Rehearsal.play(made.catalogue()), workers);
    Json json =
        new Json(
            builder ->
                builder
                    .registerTypeAdapter(Diagnostic.class, new DiagnosticJson())
                    .registerTypeAdapter(TextEdit.class, new TextEditJson()));
    Connection line = new Connection(out, json);
    Session session = new Session(reading, workers, new Editor(line));
    ChainServer server = new ChainServer(session, new FindingsPublisher(session, publishing));
    Messages messages = new Messages(server, json);
    CompletableFuture<Integer> ended = server.exitCode();
    reader.execute(
        () -> {
          line.listen(in, messages);
          // The editor's stream has ended.
          ended.complete(1);
        });
    try {
      return ended.join();
    } finally {
      workers.shutdownNow();
      publishing.shutdownNow();
      helper.shutdownNow();
      reader.shutdownNow();
    }
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "chainwright");
    thread.setDaemon(true);
    return thread;
  }
}
