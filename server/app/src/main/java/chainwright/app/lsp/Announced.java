package chainwright.app.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What an editor has announced, as it was sent; each thing in it is found by the names that lead to
 * it. Something of another kind than it should be is as if it had not been announced.
 *
 * @param root the {@code capabilities} of the editor's first message
 */
record Announced(JsonElement root) {

  boolean has(String... path) {
    return at(path) instanceof JsonObject;
  }

  boolean is(String... path) {
    return at(path) instanceof JsonPrimitive flag && flag.isBoolean() && flag.getAsBoolean();
  }

  Optional<Integer> number(String... path) {
    return at(path) instanceof JsonPrimitive number && number.isNumber()
        ? Optional.of(number.getAsInt())
        : Optional.empty();
  }

  /** The words of a list; a word alone is a list of one. */
  List<String> words(String... path) {
    return all(path).stream().map(JsonPrimitive::getAsString).toList();
  }

  List<Integer> numbers(String... path) {
    return all(path).stream().filter(JsonPrimitive::isNumber).map(JsonPrimitive::getAsInt).toList();
  }

  private List<JsonPrimitive> all(String... path) {
    List<JsonPrimitive> all = new ArrayList<>();
    JsonElement found = at(path);
    if (found instanceof JsonPrimitive one) {
      all.add(one);
    } else if (found instanceof JsonArray array) {
      for (JsonElement one : array) {
        if (one instanceof JsonPrimitive word) {
          all.add(word);
        }
      }
    }
    return all;
  }

  private JsonElement at(String... path) {
    JsonElement found = root;
    for (String name : path) {
      found =
          found instanceof JsonObject object && object.has(name)
              ? object.get(name)
              : JsonNull.INSTANCE;
    }
    return found;
  }
}
