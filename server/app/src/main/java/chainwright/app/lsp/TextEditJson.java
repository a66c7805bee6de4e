package chainwright.app.lsp;

import com.google.gson.JsonPrimitive;
import com.google.gson.TypeAdapter;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.TextEdit;

/** Writes an edit in one piece: the layout of a long text has thousands. None is ever read. */
final class TextEditJson extends TypeAdapter<TextEdit> {

  @Override
  public void write(JsonWriter out, TextEdit edit) throws IOException {
    StringBuilder json = new StringBuilder();
    json.append("{\"range\":{\"start\":");
    append(json, edit.getRange().getStart());
    json.append(",\"end\":");
    append(json, edit.getRange().getEnd());
    json.append("},\"newText\":");
    append(json, edit.getNewText());
    out.jsonValue(json.append('}').toString());
  }

  @Override
  public TextEdit read(JsonReader in) {
    throw new UnsupportedOperationException("no message to the server holds an edit");
  }

  private static void append(StringBuilder json, Position position) {
    json.append("{\"line\":")
        .append(position.getLine())
        .append(",\"character\":")
        .append(position.getCharacter())
        .append('}');
  }

  private static void append(StringBuilder json, String text) {
    if (isPlain(text)) {
      json.append('"').append(text).append('"');
    } else {
      json.append(new JsonPrimitive(text));
    }
  }

  private static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < ' ' || c > '~' || c == '"' || c == '\\') {
        return false;
      }
    }
    return true;
  }
}
