package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SignaturesTest {

  private static final String URI = "file:///r/a.chain";
  private static final String OFFSETS =
      "{\"textDocument\":{\"signatureHelp\":{\"signatureInformation\":"
          + "{\"parameterInformation\":{\"labelOffsetSupport\":true}}}}}";

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      nullValues = "-",
      value = {
        "high-pass ; 0; [11,20]",
        "high-pass 66 Hz ; 1; [11,20]",
        "gain 1 dB expected-average -18 dBFS expected-peak -6 dBFS ; 3; [6,13]",
      })
  void answer_namesTheSettingAtTheCaret(String line, int active, String firstLabel) {
    JsonObject help = ask(OFFSETS, line).getAsJsonObject();
    JsonObject signature = help.getAsJsonArray("signatures").get(0).getAsJsonObject();
    assertThat(help.get("activeParameter").getAsInt()).isEqualTo(active);
    JsonObject first = signature.getAsJsonArray("parameters").get(0).getAsJsonObject();
    assertThat(first.get("label")).hasToString(firstLabel);
  }

  @ParameterizedTest
  @CsvSource({"{}, gain dB"})
  void editorWithoutOffsets_getsTheText(String capabilities, String label) {
    JsonObject help = ask(capabilities, "gain ").getAsJsonObject();
    assertThat(help.toString()).contains("\"label\":\"" + label + "\"");
  }

  @ParameterizedTest
  @CsvSource({"source ", "' '"})
  void lineOfNoStage_hasNone(String line) {
    assertThat(ask(OFFSETS, line).isJsonNull()).isTrue();
  }

  private static JsonElement ask(String capabilities, String line) {
    String text = "chain a {\n  " + line.strip() + " ";
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(capabilities)) {
      editor.open(URI, text + "\n}\n");
      return editor.ask(
          "textDocument/signatureHelp",
          "{\"textDocument\":{\"uri\":\""
              + URI
              + "\"},\"position\":{\"line\":1,\"character\":"
              + (text.length() - text.indexOf('\n') - 1)
              + "}}");
    }
  }
}
