package chainwright.app.lsp.wire;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import com.google.gson.JsonParseException;
import java.util.Map;
import java.util.function.Consumer;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.jspecify.annotations.Nullable;

/** Translates between JSON and the protocol's objects. Safe for use by several threads. */
public final class Json {

  private final Consumer<GsonBuilder> settings;
  private volatile @Nullable Gson gson;

  /**
   * Translates the protocol's objects.
   *
   * @param settings what is translated in a way of its own
   */
  public Json(Consumer<GsonBuilder> settings) {
    this.settings = settings;
  }

  /**
   * Reads an object.
   *
   * @param <T> its type
   * @param json what was sent
   * @param type its type
   * @return the object
   * @throws JsonParseException if something in it is of another kind than it should be
   */
  public <T> T read(JsonElement json, Class<T> type) {
    return gson().fromJson(json, type);
  }

  /** Writes an object, or what is JSON already. */
  String write(@Nullable Object object) {
    if (object == null) {
      return "null";
    }
    return object instanceof JsonElement json ? json.toString() : gson().toJson(object);
  }

  /** Setting Gson up costs a start more than its messages do, which need none of it. */
  private Gson gson() {
    Gson made = gson;
    if (made == null) {
      GsonBuilder builder = new MessageJsonHandler(Map.of()).getDefaultGsonBuilder();
      settings.accept(builder);
      made = builder.create();
      gson = made;
    }
    return made;
  }
}
