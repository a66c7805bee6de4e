package chainwright.app.lsp;

import chainwright.app.workspace.NearbyFiles;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;

/** The life of a session: from {@code initialize} to {@code exit}. */
final class ChainServer {

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

  TextRequests text() {
    return text;
  }

  WorkspaceRequests workspace() {
    return workspace;
  }

  /** Begins the session; read and written by hand, since an editor waits for nothing so long. */
  CompletableFuture<JsonObject> initialize(JsonObject params) {
    if (session.stage() != Session.Stage.NEW) {
      return CompletableFuture.failedFuture(
          Session.error(ResponseErrorCode.InvalidRequest, "`initialize` must come only once"));
    }
    session.begin(
        ClientTraits.of(new Announced(member(params, "capabilities"))),
        member(params, "initializationOptions"));
    workspace.begin(folders(params));
    JsonObject info = new JsonObject();
    info.addProperty("name", "chainwright");
    info.addProperty("version", version());
    JsonObject result = new JsonObject();
    result.add("capabilities", Capabilities.of(session.traits()));
    result.add("serverInfo", info);
    return CompletableFuture.completedFuture(result);
  }

  void initialized() {
    JsonArray wanted = new JsonArray();
    if (session.traits().watchesFiles()) {
      JsonArray watchers = new JsonArray();
      watchers.add(watcher("**/*.chain"));
      // A pattern knows no letter case, and recorders write names in capitals.
      for (String ending : NearbyFiles.recordingEndings()) {
        watchers.add(watcher("**/*" + ending));
        watchers.add(watcher("**/*" + ending.toUpperCase(Locale.ROOT)));
      }
      JsonObject options = new JsonObject();
      options.add("watchers", watchers);
      JsonObject files = registration("chain-files", "workspace/didChangeWatchedFiles");
      files.add("registerOptions", options);
      wanted.add(files);
    }
    if (session.traits().watchesSettings()) {
      wanted.add(registration("settings", "workspace/didChangeConfiguration"));
    }
    if (!wanted.isEmpty()) {
      session.editor().register(wanted);
    }
    if (session.traits().pullsSettings()) {
      SettingsPull.start(session, publisher);
    }
  }

  private static JsonObject watcher(String pattern) {
    JsonObject watcher = new JsonObject();
    watcher.addProperty("globPattern", pattern);
    return watcher;
  }

  CompletableFuture<@Nullable Void> shutdown() {
    session.shutDown();
    return CompletableFuture.completedFuture(null);
  }

  void exit() {
    exitCode.complete(session.stage() == Session.Stage.SHUT_DOWN ? 0 : 1);
  }

  /** The code with which the process ends, once the editor has said {@code exit}. */
  CompletableFuture<Integer> exitCode() {
    return exitCode;
  }

  private static JsonObject registration(String id, String method) {
    JsonObject registration = new JsonObject();
    registration.addProperty("id", id);
    registration.addProperty("method", method);
    return registration;
  }

  private static JsonElement member(JsonObject object, String name) {
    return object.has(name) ? object.get(name) : JsonNull.INSTANCE;
  }

  private static List<WorkspaceFolder> folders(JsonObject params) {
    List<WorkspaceFolder> folders = new ArrayList<>();
    if (params.get("workspaceFolders") instanceof JsonArray sent) {
      for (JsonElement one : sent) {
        if (one instanceof JsonObject folder && folder.get("uri") instanceof JsonPrimitive uri) {
          String name = folder.get("name") instanceof JsonPrimitive said ? said.getAsString() : "";
          folders.add(new WorkspaceFolder(uri.getAsString(), name));
        }
      }
    } else if (params.get("rootUri") instanceof JsonPrimitive uri) {
      // Older editors send their one folder so.
      folders.add(new WorkspaceFolder(uri.getAsString(), ""));
    }
    return folders;
  }

  private static String version() {
    return Optional.ofNullable(ChainServer.class.getPackage().getImplementationVersion())
        .orElse("unreleased");
  }
}
