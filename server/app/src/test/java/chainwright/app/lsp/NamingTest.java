package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

  @Test
  void prepareRename_onAName_isItsRangeAndText() {
    String onName = params(",\"position\":{\"line\":2,\"character\":10}");
    try (ScriptedEditor editor =
        ScriptedEditor.ofCapabilities(
            "{\"textDocument\":{\"rename\":{\"prepareSupport\":true}}}")) {
      editor.open(PRESETS, PRESET_TEXT);
      editor.open(CHAIN, CHAIN_TEXT);
      JsonObject found = editor.ask("textDocument/prepareRename", onName).getAsJsonObject();
      assertThat(found.get("placeholder").getAsString()).isEqualTo("guard");
      assertThat(found.getAsJsonObject("range").toString())
          .isEqualTo(
              "{\"start\":{\"line\":2,\"character\":8},\"end\":{\"line\":2,\"character\":13}}");
      String onWord = params(",\"position\":{\"line\":2,\"character\":3}");
      assertThat(editor.ask("textDocument/prepareRename", onWord).isJsonNull()).isTrue();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"kick", "Hull", "hull guard", "", "2nd", "hull-", "as", "chain", "lead-vocal"})
  void rename_toATakenNameOrNoName_isRefused(String newName) {
    try (ScriptedEditor editor = opened()) {
      String rename =
          params(",\"position\":{\"line\":1,\"character\":7},\"newName\":\"" + newName + "\"");
      assertThat(editor.askRefused("textDocument/rename", rename)).isEqualTo(-32602);
    }
  }

  @Test
  void highlight_ofAPreset_areItsUsesHere() {
    assertThat(ask("documentHighlight", ",\"position\":{\"line\":2,\"character\":10}"))
        .hasSize(2)
        .allSatisfy(mark -> assertThat(mark.getAsJsonObject().get("kind").getAsInt()).isEqualTo(2));
  }

  @Test
  void documentLink_ofAnOpenImport_leadsThere() {
    JsonArray links = ask("documentLink", "");
    assertThat(links).hasSize(1);
    JsonObject link = links.get(0).getAsJsonObject();
    assertThat(link.get("target").getAsString()).isEqualTo(PRESETS);
    assertThat(link.get("tooltip").getAsString()).contains("/r/presets.chain");
  }

  @Test
  void workspaceSymbol_ofAPart_isFoundInItsFile() {
    try (ScriptedEditor editor = opened()) {
      JsonArray found = editor.ask("workspace/symbol", "{\"query\":\"gua\"}").getAsJsonArray();
      assertThat(found).hasSize(1);
      JsonObject symbol = found.get(0).getAsJsonObject();
      assertThat(symbol.get("name").getAsString()).isEqualTo("guard");
      assertThat(symbol.getAsJsonObject("location").get("uri").getAsString()).isEqualTo(PRESETS);
      assertThat(symbol.getAsJsonObject("location").has("range")).isTrue();
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
