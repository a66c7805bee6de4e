package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TokensTest {

  private static final String URI = "file:///r/a.chain";
  private static final String TOKENS = "textDocument/semanticTokens/";
  private static final String CAPABILITIES =
      "{\"textDocument\":{\"semanticTokens\":{\"requests\":{},\"tokenTypes\":[],"
          + "\"tokenModifiers\":[],\"formats\":[]}}}";
  private static final String TEXT =
      "chain a \"\ud83c\udf99 x\" { # first\n  > Prose.\n  bell 3 kHz Q 2\n}\n";

  @Test
  void full_everyKind_isNamedWhereItStands() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(CAPABILITIES)) {
      editor.open(URI, TEXT);
      assertThat(shown(full(editor).getAsJsonArray("data")))
          .containsExactly(
              "keyword chain",
              "variable a",
              "string \"\ud83c\udf99 x\"",
              "operator {",
              "comment # first",
              "comment > Prose.",
              "keyword bell",
              "number 3",
              "type kHz",
              "property Q",
              "number 2",
              "operator }");
    }
  }

  @Test
  void range_oneLine_isThatLine() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(CAPABILITIES)) {
      editor.open(URI, TEXT);
      JsonArray data =
          editor
              .ask(
                  TOKENS + "range",
                  "{\"textDocument\":{\"uri\":\""
                      + URI
                      + "\"},\"range\":{"
                      + "\"start\":{\"line\":2,\"character\":0},\"end\":{\"line\":2,\"character\":9}}}")
              .getAsJsonObject()
              .getAsJsonArray("data");
      assertThat(shown(data)).containsExactly("keyword bell", "number 3", "type kHz");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "[]",
        "[{\"range\":{\"start\":{\"line\":2,\"character\":7},\"end\":{\"line\":2,\"character\":8}},\"text\":\"300\"}]",
        "[{\"range\":{\"start\":{\"line\":2,\"character\":0},\"end\":{\"line\":3,\"character\":0}},\"text\":\"\"}]",
        "[{\"range\":{\"start\":{\"line\":2,\"character\":0},\"end\":{\"line\":2,\"character\":0}},\"text\":\"  bell 9 kHz\\n\"}]",
        "[{\"text\":\"\"}]",
      })
  void delta_afterAnEdit_givesWhatTheWholeGives(String changes) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(CAPABILITIES)) {
      editor.open(URI, TEXT);
      JsonObject before = full(editor);
      editor.change(URI, 2, changes);
      editor.expect("textDocument/publishDiagnostics");
      JsonObject delta =
          editor
              .ask(
                  TOKENS + "full/delta",
                  "{\"textDocument\":{\"uri\":\""
                      + URI
                      + "\"},\"previousResultId\":"
                      + before.get("resultId")
                      + "}")
              .getAsJsonObject();
      List<JsonElement> data = new ArrayList<>(before.getAsJsonArray("data").asList());
      for (JsonElement element : delta.getAsJsonArray("edits")) {
        JsonObject edit = element.getAsJsonObject();
        int start = edit.get("start").getAsInt();
        data.subList(start, start + edit.get("deleteCount").getAsInt()).clear();
        data.addAll(start, edit.getAsJsonArray("data").asList());
      }
      assertThat(data).isEqualTo(full(editor).getAsJsonArray("data").asList());
    }
  }

  private static JsonObject full(ScriptedEditor editor) {
    return editor
        .ask(TOKENS + "full", "{\"textDocument\":{\"uri\":\"" + URI + "\"}}")
        .getAsJsonObject();
  }

  private static List<String> shown(JsonArray data) {
    List<String> lines = TEXT.lines().toList();
    List<String> shown = new ArrayList<>();
    int line = 0;
    int character = 0;
    for (int i = 0; i < data.size(); i += 5) {
      int down = data.get(i).getAsInt();
      line += down;
      character = data.get(i + 1).getAsInt() + (down == 0 ? character : 0);
      String type = Tokens.TYPES.get(data.get(i + 3).getAsInt());
      int end = character + data.get(i + 2).getAsInt();
      shown.add(type + " " + lines.get(line).substring(character, end));
    }
    return shown;
  }
}
