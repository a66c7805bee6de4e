package chainwright.app.lsp;

import chainwright.app.lsp.wire.Connection;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.MessageType;

/**
 * The other end of the line: what the server says and asks by itself.
 *
 * @param line leads to the editor
 */
record Editor(Connection line) {

  void publish(String uri, Optional<Integer> version, List<Diagnostic> diagnostics) {
    JsonArray written = new JsonArray();
    diagnostics.forEach(one -> written.add(DiagnosticJson.of(one)));
    JsonObject params = new JsonObject();
    params.addProperty("uri", uri);
    version.ifPresent(number -> params.addProperty("version", number));
    params.add("diagnostics", written);
    line.notify("textDocument/publishDiagnostics", params);
  }

  void warn(String message) {
    JsonObject params = new JsonObject();
    params.addProperty("type", MessageType.Warning.getValue());
    params.addProperty("message", message);
    line.notify("window/showMessage", params);
  }

  /**
   * Asks to be told of something.
   *
   * @param registrations each with an {@code id}, a {@code method} and its options
   */
  void register(JsonArray registrations) {
    JsonObject params = new JsonObject();
    params.add("registrations", registrations);
    var unused = line.request("client/registerCapability", params);
  }

  void refreshHints() {
    var unused = line.request("workspace/inlayHint/refresh", JsonNull.INSTANCE);
  }

  void refreshDiagnostics() {
    var unused = line.request("workspace/diagnostic/refresh", JsonNull.INSTANCE);
  }

  /** Asks for one section of the settings; the answer is null where the user has set nothing. */
  CompletableFuture<JsonElement> settings(String section) {
    JsonObject item = new JsonObject();
    item.addProperty("section", section);
    JsonArray items = new JsonArray();
    items.add(item);
    JsonObject params = new JsonObject();
    params.add("items", items);
    return line.request("workspace/configuration", params)
        .thenApply(
            answer ->
                answer instanceof JsonArray sections && !sections.isEmpty()
                    ? sections.get(0)
                    : JsonNull.INSTANCE);
  }
}
