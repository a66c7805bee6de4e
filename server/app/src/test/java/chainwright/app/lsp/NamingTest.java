package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;

class NamingTest {

  private static final String PRESETS = "file:///r/presets.chain";
  private static final String CHAIN = "file:///r/a.chain";
  private static final String PRESET_TEXT = "preset guard {\n  high-pass 60 Hz\n}\n";
  private static final String CHAIN_TEXT =
      "import \"presets.chain\"\nchain lead {\n  apply guard\n}\nchain kick {\n  apply guard\n}\n";

  @Test
  void definition_ofAPresetOfAnotherFile_isFoundThere() {
    JsonArray found = ask("definition", ",\"position\":{\"line\":2,\"character\":10}");
    assertThat(found).hasSize(1);
    assertThat(found.get(0).getAsJsonObject().get("uri").getAsString()).isEqualTo(PRESETS);
  }

  @Test
  void references_ofAPreset_areItsDefinitionAndItsUses() {
    JsonArray found =
        ask(
            "references",
            ",\"position\":{\"line\":2,\"character\":10},\"context\":{\"includeDeclaration\":true}");
    assertThat(found).hasSize(3);
  }

  @Test
  void rename_ofAPreset_reachesBothFiles() {
    try (ScriptedEditor editor = opened()) {
      JsonObject changes =
          editor
              .ask(
                  "textDocument/rename",
                  params(",\"position\":{\"line\":2,\"character\":10},\"newName\":\"hull-guard\""))
              .getAsJsonObject()
              .getAsJsonObject("changes");
      assertThat(changes.getAsJsonArray(CHAIN)).hasSize(2);
      assertThat(changes.getAsJsonArray(PRESETS)).hasSize(1);
    }
  }

  private static JsonArray ask(String request, String rest) {
    try (ScriptedEditor editor = opened()) {
      return editor.ask("textDocument/" + request, params(rest)).getAsJsonArray();
    }
  }

  private static ScriptedEditor opened() {
    ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}");
    editor.open(PRESETS, PRESET_TEXT);
    editor.open(CHAIN, CHAIN_TEXT);
    return editor;
  }

  private static String params(String rest) {
    return "{\"textDocument\":{\"uri\":\"" + CHAIN + "\"}" + rest + "}";
  }
}
