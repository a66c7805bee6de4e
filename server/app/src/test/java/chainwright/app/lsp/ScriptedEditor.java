package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * An editor that follows a script over the real streams of a server. It fails on every message that
 * the script does not expect, and at the end on every one it has not read.
 */
final class ScriptedEditor implements AutoCloseable {

  private static final long PATIENCE_SECONDS = 20;

  private final OutputStream toServer;
  private final BlockingQueue<JsonObject> received = new LinkedBlockingQueue<>();
  private final CompletableFuture<Integer> exitCode = new CompletableFuture<>();
  private final CompletableFuture<Void> streamEnd = new CompletableFuture<>();
  private int lastId;

  ScriptedEditor() {
    try {
      // Pipes of the system: those of java.io fail once a thread that wrote has ended, and the
      // server writes from threads that come and go.
      Pipe in = Pipe.open();
      Pipe out = Pipe.open();
      InputStream serverIn = Channels.newInputStream(in.source());
      OutputStream serverOut = Channels.newOutputStream(out.sink());
      DataInputStream fromServer =
          new DataInputStream(new BufferedInputStream(Channels.newInputStream(out.source())));
      toServer = Channels.newOutputStream(in.sink());
      start(
          "server",
          () -> {
            int code = StdioServer.serve(serverIn, serverOut);
            closeQuietly(serverIn);
            closeQuietly(serverOut);
            exitCode.complete(code);
          });
      start("editor", () -> readAll(fromServer));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Starts a session with an editor that can do what is given. */
  static ScriptedEditor ofCapabilities(String capabilities) {
    return ofInitialize(
        "{\"processId\":null,\"rootUri\":null,\"capabilities\":" + capabilities + "}");
  }

  static ScriptedEditor ofInitialize(String params) {
    ScriptedEditor editor = new ScriptedEditor();
    editor.ask("initialize", params);
    editor.tell("initialized", "{}");
    return editor;
  }

  /** Sends a request and returns its result; anything but that answer fails. */
  JsonElement ask(String method, String params) {
    JsonObject answer = answerTo(send(method, params));
    assertThat(answer.has("error")).as("error in %s", answer).isFalse();
    return answer.get("result");
  }

  /** Sends a request that must be refused and returns the error's code. */
  int askRefused(String method, String params) {
    JsonObject answer = answerTo(send(method, params));
    assertThat(answer.has("error")).as("error in %s", answer).isTrue();
    return answer.getAsJsonObject("error").get("code").getAsInt();
  }

  /** Sends a request without waiting and returns its number. */
  int send(String method, String params) {
    int id = ++lastId;
    write(
        "{\"jsonrpc\":\"2.0\",\"id\":"
            + id
            + ",\"method\":\""
            + method
            + "\",\"params\":"
            + params
            + "}");
    return id;
  }

  JsonObject answerTo(int id) {
    JsonObject message = next();
    assertThat(message.has("id") && !message.has("method") ? message.get("id").getAsString() : "")
        .as("the answer in %s", message)
        .isEqualTo(Integer.toString(id));
    return message;
  }

  void tell(String method, String params) {
    write("{\"jsonrpc\":\"2.0\",\"method\":\"" + method + "\",\"params\":" + params + "}");
  }

  /** Takes the next message, which must be one of the server's own, and returns its parameters. */
  JsonObject expect(String method) {
    return expectMessage(method).getAsJsonObject("params");
  }

  /** Takes the next message, which must be a request of the server's, and answers it. */
  JsonObject expectAndAnswer(String method, String result) {
    JsonObject message = expectMessage(method);
    write("{\"jsonrpc\":\"2.0\",\"id\":" + message.get("id") + ",\"result\":" + result + "}");
    return message.getAsJsonObject("params");
  }

  private JsonObject expectMessage(String method) {
    JsonObject message = next();
    assertThat(message.has("method") ? message.get("method").getAsString() : "")
        .as("the method in %s", message)
        .isEqualTo(method);
    return message;
  }

  JsonObject next() {
    try {
      JsonObject message = received.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
      assertThat(message).as("a message from the server").isNotNull();
      return message;
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  /** Skips what the server says about broken messages, up to the next message of its own. */
  void awaitMethod(String method) {
    JsonObject message = next();
    while (!message.has("method")) {
      assertThat(message.has("error")).as("error in %s", message).isTrue();
      message = next();
    }
    assertThat(message.get("method").getAsString()).isEqualTo(method);
  }

  /** Opens a document and takes the findings that come for it. */
  JsonObject open(String uri, String text) {
    openQuietly(uri, text);
    return expect("textDocument/publishDiagnostics");
  }

  void openQuietly(String uri, String text) {
    JsonObject document = new JsonObject();
    document.addProperty("uri", uri);
    document.addProperty("languageId", "chain");
    document.addProperty("version", 1);
    document.addProperty("text", text);
    tell("textDocument/didOpen", "{\"textDocument\":" + document + "}");
  }

  void change(String uri, int version, String changes) {
    tell(
        "textDocument/didChange",
        "{\"textDocument\":{\"uri\":\""
            + uri
            + "\",\"version\":"
            + version
            + "},\"contentChanges\":"
            + changes
            + "}");
  }

  /** Sends a message as it is. */
  void write(String json) {
    byte[] body = json.getBytes(StandardCharsets.UTF_8);
    writeBytes("Content-Length: " + body.length + "\r\n\r\n" + json);
  }

  void writeBytes(String bytes) {
    try {
      toServer.write(bytes.getBytes(StandardCharsets.UTF_8));
      toServer.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Ends the stream to the server, as an editor that dies does. */
  void hangUp() {
    closeQuietly(toServer);
  }

  int awaitExitCode() {
    return exitCode.orTimeout(PATIENCE_SECONDS, TimeUnit.SECONDS).join();
  }

  /** Shuts the server down and fails if a message was left unread. */
  @Override
  public void close() {
    if (!exitCode.isDone()) {
      ask("shutdown", "null");
      tell("exit", "null");
      assertThat(awaitExitCode()).as("exit code").isZero();
    }
    streamEnd.orTimeout(PATIENCE_SECONDS, TimeUnit.SECONDS).join();
    assertThat(received).as("messages that nobody read").isEmpty();
  }

  private void readAll(DataInputStream from) {
    try {
      while (true) {
        StringBuilder header = new StringBuilder();
        while (header.indexOf("\r\n\r\n") < 0) {
          header.append((char) from.readUnsignedByte());
        }
        String length = header.toString().replaceAll("(?s).*Content-Length: (\\d+).*", "$1");
        byte[] body = new byte[Integer.parseInt(length)];
        from.readFully(body);
        received.add(
            JsonParser.parseString(new String(body, StandardCharsets.UTF_8)).getAsJsonObject());
      }
    } catch (EOFException e) {
      closeQuietly(from);
      streamEnd.complete(null);
    } catch (IOException e) {
      streamEnd.completeExceptionally(e);
    }
  }

  private static void closeQuietly(Closeable stream) {
    try {
      stream.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void start(String name, Runnable work) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }
}
