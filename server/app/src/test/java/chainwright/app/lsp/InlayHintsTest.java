package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InlayHintsTest {

  private static final String URI = "file:///r/a.chain";
  private static final String TEXT =
      "chain a {\n  high-pass 66 Hz 18 dB/oct\n  bell 300 Hz -2 dB Q 2\n  bell 1 kHz -2 dB\n}\n";
  private static final String REFRESHED =
      "{\"workspace\":{\"inlayHint\":{\"refreshSupport\":true}}}";

  @Test
  void answer_ofOneLine_isWhatStandsThere() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, TEXT);
      JsonArray hints = ask(editor, 3, 3);
      assertThat(labels(hints)).containsExactly("\u2248 B5 +21 ct", "Q 1");
      JsonObject omitted = hints.get(1).getAsJsonObject();
      assertThat(omitted.getAsJsonArray("textEdits").get(0).getAsJsonObject().get("newText"))
          .hasToString("\"  Q 1\"");
      assertThat(omitted.getAsJsonObject("tooltip").get("kind")).hasToString("\"markdown\"");
      assertThat(omitted.get("position")).hasToString("{\"line\":3,\"character\":18}");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      nullValues = "-",
      value = {
        "\"none\"; -",
        "\"all\"; ≈ C2 +16 ct, ≈ D4 +37 ct, ≈ 0.71 oct, ≈ B5 +21 ct, Q 1",
        "[]; -",
        "[\"octaves\"]; ≈ 0.71 oct",
        "[\"omitted\", \"octaves\"]; ≈ 0.71 oct, Q 1",
      })
  void setting_choosesTheKinds(String setting, String labels) {
    try (ScriptedEditor editor =
        ScriptedEditor.ofInitialize(
            "{\"processId\":null,\"rootUri\":null,\"capabilities\":{},"
                + "\"initializationOptions\":{\"hints\":"
                + setting
                + "}}")) {
      editor.open(URI, TEXT);
      assertThat(String.join(", ", labels(ask(editor, 0, 5))))
          .isEqualTo(labels == null ? "" : labels);
    }
  }

  @Test
  void setting_thatIsNoKind_isReportedAndKeepsWhatHeld() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(REFRESHED)) {
      editor.tell(
          "workspace/didChangeConfiguration",
          "{\"settings\":{\"chainwright\":{\"hints\":[\"colours\"]}}}");
      assertThat(editor.expect("window/showMessage").get("message").getAsString())
          .contains("`hints`", "`omitted`, `notes`, `octaves`, `corners`", "colours");
      editor.expectAndAnswer("workspace/inlayHint/refresh", "null");
      editor.open(URI, TEXT);
      assertThat(ask(editor, 0, 5)).hasSize(5);
    }
  }

  private static JsonArray ask(ScriptedEditor editor, int fromLine, int toLine) {
    return editor
        .ask(
            "textDocument/inlayHint",
            "{\"textDocument\":{\"uri\":\""
                + URI
                + "\"},\"range\":{\"start\":{\"line\":"
                + fromLine
                + ",\"character\":0},\"end\":{\"line\":"
                + toLine
                + ",\"character\":99}}}")
        .getAsJsonArray();
  }

  private static List<String> labels(JsonArray hints) {
    List<String> labels = new ArrayList<>();
    for (JsonElement hint : hints) {
      labels.add(hint.getAsJsonObject().get("label").getAsString());
    }
    return labels;
  }
}
