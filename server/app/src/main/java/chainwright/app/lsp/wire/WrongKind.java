package chainwright.app.lsp.wire;

import com.google.gson.JsonElement;
import com.google.gson.JsonParseException;
import com.google.gson.JsonPrimitive;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says which member of a message is of another kind than it should be, and of which it is. */
final class WrongKind {

  /** How Gson says it, with the names of its own tokens. */
  private static final Pattern SAID =
      Pattern.compile("Expected (?:an? )?(\\w+) but was (\\w+) at path \\$(\\S*)");

  private WrongKind() {}

  /** Returns what was expected and what was found. */
  static String in(JsonParseException thrown) {
    String said = String.valueOf(thrown.getMessage());
    Matcher found = SAID.matcher(said);
    return found.find()
        ? "`params"
            + found.group(3)
            + "` must be "
            + kind(found.group(1))
            + "; found "
            + kind(found.group(2))
        : "`params` cannot be read: " + said.lines().findFirst().orElse("");
  }

  /** Returns the kind of a value, with its article. */
  static String of(JsonElement value) {
    if (value instanceof JsonPrimitive one) {
      return kind(one.isString() ? "STRING" : one.isNumber() ? "NUMBER" : "BOOLEAN");
    }
    return kind(value.isJsonNull() ? "NULL" : value.isJsonArray() ? "BEGIN_ARRAY" : "BEGIN_OBJECT");
  }

  private static String kind(String token) {
    return switch (token) {
      case "BEGIN_OBJECT" -> "an object";
      case "BEGIN_ARRAY" -> "a list";
      case "STRING", "string" -> "a text";
      case "NUMBER", "int", "long", "double" -> "a number";
      case "BOOLEAN", "boolean" -> "true or false";
      case "NULL" -> "null";
      default -> "`" + token + "`";
    };
  }
}
