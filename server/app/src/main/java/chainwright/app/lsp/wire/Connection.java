package chainwright.app.lsp.wire;

import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;

/**
 * One end of a line on which requests, answers and notifications go both ways. Any thread may send.
 *
 * <p>Source: JSON-RPC 2.0 Specification, sections 4 and 5; Language Server Protocol 3.17, "Base
 * Protocol", for {@code $/} methods and cancelling.
 */
public final class Connection {

  private final OutputStream out;
  private final Json json;
  private final AtomicInteger lastId = new AtomicInteger();

  /** Requests that the other side has not answered yet, by their id. */
  private final Map<String, CompletableFuture<JsonElement>> asked = new ConcurrentHashMap<>();

  /** Requests of the other side that are worked on, by their id. */
  private final Map<JsonElement, CompletableFuture<?>> answering = new ConcurrentHashMap<>();

  /**
   * Begins a line that is ready to send.
   *
   * @param out where messages go; nothing else may write to it
   * @param json translates what is answered
   */
  public Connection(OutputStream out, Json json) {
    this.out = out;
    this.json = json;
  }

  /**
   * Tells the other side something.
   *
   * @param method what is told
   * @param params the parameters; JSON's null for none
   */
  public void notify(String method, JsonElement params) {
    send(called(method, params));
  }

  /**
   * Asks the other side something.
   *
   * @param method what is asked
   * @param params the parameters; JSON's null for none
   * @return the result, when it comes; it fails where the other side refuses
   */
  public CompletableFuture<JsonElement> request(String method, JsonElement params) {
    String id = Integer.toString(lastId.incrementAndGet());
    CompletableFuture<JsonElement> answer = new CompletableFuture<>();
    asked.put(id, answer);
    send(",\"id\":\"" + id + "\"" + called(method, params));
    return answer;
  }

  /**
   * Reads messages until the stream ends or breaks, and has each answered.
   *
   * @param in where messages come from
   * @param peer answers them
   */
  public void listen(InputStream in, Peer peer) {
    MessageStream messages = new MessageStream(in);
    try {
      for (Optional<MessageStream.Framed> next = messages.next();
          next.isPresent();
          next = messages.next()) {
        Optional<String> body = next.get().body();
        if (body.isPresent()) {
          receive(body.get(), peer);
        } else {
          refuse(
              JsonNull.INSTANCE,
              ResponseErrorCode.ParseError,
              "a header must say `Content-Length`");
        }
      }
    } catch (IOException e) {
      // The other side is gone, as at the stream's end.
    }
  }

  private void receive(String body, Peer peer) {
    JsonElement parsed;
    try {
      parsed = JsonParser.parseString(body);
    } catch (JsonParseException e) {
      refuse(JsonNull.INSTANCE, ResponseErrorCode.ParseError, "the message is no JSON");
      return;
    }
    if (!(parsed instanceof JsonObject message)) {
      refuse(JsonNull.INSTANCE, ResponseErrorCode.InvalidRequest, "a message must be an object");
      return;
    }
    JsonElement params = message.has("params") ? message.get("params") : JsonNull.INSTANCE;
    boolean isNumbered = message.get("id") instanceof JsonPrimitive;
    if (!(message.get("method") instanceof JsonPrimitive method)) {
      if (message.has("result") || message.has("error")) {
        takeAnswer(message);
      } else {
        refuse(
            isNumbered ? message.get("id") : JsonNull.INSTANCE,
            ResponseErrorCode.InvalidRequest,
            "a message must have a `method` that is a text, or be an answer");
      }
    } else if (!isNumbered && message.has("id")) {
      refuse(
          JsonNull.INSTANCE,
          ResponseErrorCode.InvalidRequest,
          "the `id` of `"
              + method.getAsString()
              + "` must be a number or a text; found "
              + WrongKind.of(message.get("id")));
    } else if (isNumbered) {
      answer(message.get("id"), method.getAsString(), params, peer);
    } else if (method.getAsString().equals("$/cancelRequest")) {
      cancel(params);
    } else {
      try {
        peer.notify(method.getAsString(), params);
      } catch (RuntimeException | StackOverflowError e) {
        // A notification is never answered, so there is no place to say what is wrong with it.
      }
    }
  }

  private void takeAnswer(JsonObject message) {
    CompletableFuture<JsonElement> answer =
        message.get("id") instanceof JsonPrimitive id ? asked.remove(id.getAsString()) : null;
    if (answer != null && message.get("error") instanceof JsonObject error) {
      answer.completeExceptionally(
          new ResponseErrorException(json.read(error, ResponseError.class)));
    } else if (answer != null) {
      answer.complete(message.has("result") ? message.get("result") : JsonNull.INSTANCE);
    }
  }

  private void cancel(JsonElement params) {
    if (params instanceof JsonObject object && object.get("id") instanceof JsonPrimitive id) {
      CompletableFuture<?> work = answering.get(id);
      if (work != null) {
        work.cancel(true);
      }
    }
  }

  private void answer(JsonElement id, String method, JsonElement params, Peer peer) {
    CompletableFuture<?> work;
    try {
      work = peer.request(method, params);
    } catch (RuntimeException | StackOverflowError e) {
      // The latter from parameters that hold one another too deep.
      work = CompletableFuture.failedFuture(e);
    }
    answering.put(id, work);
    var unused =
        work.whenComplete(
            (result, thrown) -> {
              answering.remove(id);
              if (thrown == null) {
                sendResult(id, result);
              } else {
                refuse(id, thrown);
              }
            });
  }

  private void sendResult(JsonElement id, @Nullable Object result) {
    String written;
    try {
      written = json.write(result);
    } catch (RuntimeException e) {
      refuse(id, e);
      return;
    }
    send(",\"id\":" + id + ",\"result\":" + written);
  }

  private void refuse(JsonElement id, Throwable thrown) {
    Throwable cause =
        thrown instanceof CompletionException && thrown.getCause() != null
            ? thrown.getCause()
            : thrown;
    if (cause instanceof ResponseErrorException refused) {
      send(",\"id\":" + id + ",\"error\":" + error(refused.getResponseError()));
    } else if (cause instanceof CancellationException) {
      refuse(id, ResponseErrorCode.RequestCancelled, "the request was cancelled");
    } else if (cause instanceof JsonParseException wrong) {
      refuse(id, ResponseErrorCode.InvalidParams, WrongKind.in(wrong));
    } else {
      refuse(id, ResponseErrorCode.InternalError, "the server failed: " + cause);
    }
  }

  private void refuse(JsonElement id, ResponseErrorCode code, String message) {
    refuse(id, new ResponseErrorException(new ResponseError(code, message, null)));
  }

  private static String called(String method, JsonElement params) {
    String name = ",\"method\":" + new JsonPrimitive(method);
    return params.isJsonNull() ? name : name + ",\"params\":" + params;
  }

  private static JsonObject error(ResponseError refused) {
    JsonObject error = new JsonObject();
    error.addProperty("code", refused.getCode());
    error.addProperty("message", refused.getMessage());
    return error;
  }

  private void send(String members) {
    byte[] body = ("{\"jsonrpc\":\"2.0\"" + members + "}").getBytes(StandardCharsets.UTF_8);
    byte[] header =
        ("Content-Length: " + body.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII);
    try {
      synchronized (out) {
        out.write(header);
        out.write(body);
        out.flush();
      }
    } catch (IOException e) {
      // The other side is gone; its stream to here ends as well, and with it the session.
    }
  }
}
