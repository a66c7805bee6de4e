package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Texts in step with the editor's, and findings in step with the texts. */
class SyncTest {

  private static final String URI = "file:///r/a.chain";
  private static final String FINDINGS = "textDocument/publishDiagnostics";

  /** The document is `chain a {⏎ note "🎙x" 5⏎}⏎`; the microphone is two units of UTF-16. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "utf-16 | 1,13 1,14 bell                  | note \"🎙x\" bell",
        "utf-16 | 1,8 1,10 y                      | note \"yx\" 5",
        "utf-8  | 1,15 1,16 bell                  | note \"🎙x\" bell",
        "utf-32 | 1,12 1,13 bell                  | note \"🎙x\" bell",
        "utf-16 | 1,14 1,99 6                     | note \"🎙x\" 56",
        "utf-16 | 1,13 1,14 6; 1,2 1,6 listen     | listen \"🎙x\" 6",
        "utf-16 | 1,2 1,6 listen; 1,15 1,16 7     | listen \"🎙x\" 7",
      })
  void change_inUnitsOfTheEncoding_reachesTheSpot(String encoding, String edits, String line) {
    checkLineAfter(encoding, edits, line);
  }

  private static void checkLineAfter(String encoding, String edits, String line) {
    String capabilities =
        "{\"general\":{\"positionEncodings\":[\""
            + encoding
            + "\"]},"
            + "\"textDocument\":{\"documentSymbol\":{\"hierarchicalDocumentSymbolSupport\":true}}}";
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(capabilities)) {
      editor.open(URI, "chain a {\n  note \"🎙x\" 5\n}\n");
      List<String> changes = new ArrayList<>();
      for (String edit : edits.split("; ", -1)) {
        String[] parts = edit.split("[ ,]", 5);
        changes.add(
            String.format(
                "{\"range\":{\"start\":{\"line\":%s,\"character\":%s},"
                    + "\"end\":{\"line\":%s,\"character\":%s}},\"text\":\"%s\"}",
                (Object[]) parts));
      }
      editor.change(URI, 2, changes.toString());
      assertThat(editor.expect(FINDINGS).get("version").getAsInt()).isEqualTo(2);
      JsonObject stage =
          editor
              .ask("textDocument/documentSymbol", "{\"textDocument\":{\"uri\":\"" + URI + "\"}}")
              .getAsJsonArray()
              .get(0)
              .getAsJsonObject()
              .getAsJsonArray("children")
              .get(0)
              .getAsJsonObject();
      assertThat(stage.get("name").getAsString() + " " + stage.get("detail").getAsString())
          .isEqualTo(line);
    }
  }

  @Test
  void change_mended_publishesTheEmptyList() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      assertThat(codes(editor.open(URI, "chain a {\n"))).containsExactly("missing-brace");
      editor.change(URI, 2, "[{\"text\":\"chain a { }\\n\"}]");
      JsonObject after = editor.expect(FINDINGS);
      assertThat(codes(after)).isEmpty();
      assertThat(after.get("version").getAsInt()).isEqualTo(2);
      assertThat(after.get("uri").getAsString()).isEqualTo(URI);
    }
  }

  @Test
  void open_numberWithoutUnit_isFoundWhereItStands() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      JsonObject published = editor.open(URI, "chain a { }\n\nchain b {\n  high-pass 66\n}\n");
      assertThat(codes(published)).containsExactly("missing-unit");
      assertThat(
              published
                  .getAsJsonArray("diagnostics")
                  .get(0)
                  .getAsJsonObject()
                  .get("range")
                  .toString())
          .isEqualTo(
              "{\"start\":{\"line\":3,\"character\":12},\"end\":{\"line\":3,\"character\":14}}");
    }
  }

  @Test
  void open_recordingInsteadOfAText_hasOneFinding() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      JsonObject published =
          editor.open(URI, "RIFF\u0000\ufffdWAVEfmt \u0010\u0000\nchain a {\n}{ 3\u0001");
      assertThat(codes(published)).containsExactly("not-text");
    }
  }

  @Test
  void close_withFindings_takesThemBack() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, "chain a {\n");
      editor.tell("textDocument/didClose", "{\"textDocument\":{\"uri\":\"" + URI + "\"}}");
      assertThat(codes(editor.expect(FINDINGS))).isEmpty();
    }
  }

  @Test
  void change_uriSpeltOtherwise_isTheSameDocument() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      String opened = "file:///c%3A/takes/a.chain";
      editor.open(opened, "chain a {\n");
      editor.change("file:///C:/takes/a.chain", 2, "[{\"text\":\"chain a { }\\n\"}]");
      JsonObject after = editor.expect(FINDINGS);
      assertThat(codes(after)).isEmpty();
      assertThat(after.get("uri").getAsString()).isEqualTo(opened);
    }
  }

  @Test
  void pull_editorAnnouncesIt_getsNothingUnasked() {
    try (ScriptedEditor editor =
        ScriptedEditor.ofCapabilities("{\"textDocument\":{\"diagnostic\":{}}}")) {
      editor.openQuietly(URI, "chain a {\n");
      JsonObject first = pull(editor, "");
      assertThat(first.get("kind").getAsString()).isEqualTo("full");
      assertThat(first.getAsJsonArray("items")).hasSize(1);
      String name = ",\"previousResultId\":" + first.get("resultId");
      assertThat(pull(editor, name).get("kind").getAsString()).isEqualTo("unchanged");
      editor.change(URI, 2, "[{\"text\":\"chain a { }\\n\"}]");
      assertThat(pull(editor, name).getAsJsonArray("items")).isEmpty();
    }
  }

  private static JsonObject pull(ScriptedEditor editor, String more) {
    return editor
        .ask("textDocument/diagnostic", "{\"textDocument\":{\"uri\":\"" + URI + "\"}" + more + "}")
        .getAsJsonObject();
  }

  @Test
  void import_changedOnDisk_looksAtItsImporterAgain(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("presets.chain"), "preset p { }\n");
    String uri = folder.resolve("a.chain").toUri().toString();
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(uri, "import \"presets.chain\"\n");
      editor.tell(
          "workspace/didChangeWatchedFiles",
          "{\"changes\":[{\"uri\":\""
              + folder.resolve("presets.chain").toUri()
              + "\",\"type\":2},"
              + "{\"uri\":\""
              + folder.resolve("other.chain").toUri()
              + "\",\"type\":1}]}");
      assertThat(editor.expect(FINDINGS).get("uri").getAsString()).isEqualTo(uri);
    }
  }

  @Test
  void take_thatAppears_clearsItsFinding(@TempDir Path folder) throws IOException {
    String uri = folder.resolve("a.chain").toUri().toString();
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      assertThat(
              editor.open(uri, "chain a {\n  take \"mic.WAV\"\n}\n").getAsJsonArray("diagnostics"))
          .hasSize(1);
      Path take = Files.write(folder.resolve("mic.WAV"), new byte[1]);
      editor.tell(
          "workspace/didChangeWatchedFiles",
          "{\"changes\":[{\"uri\":\"" + take.toUri() + "\",\"type\":1}]}");
      assertThat(editor.expect(FINDINGS).getAsJsonArray("diagnostics")).isEmpty();
    }
  }

  @Test
  void settings_severityChanged_isShown() {
    try (ScriptedEditor editor =
        ScriptedEditor.ofInitialize(
            "{\"capabilities\":{},\"initializationOptions\":{\"severities\":{\"missing-brace\":\"hint\"}}}")) {
      assertThat(severity(editor.open(URI, "chain a {\n"))).isEqualTo(4);
      configure(editor, "{\"severities\":{\"missing-brace\":\"warning\"}}");
      assertThat(severity(editor.expect(FINDINGS))).isEqualTo(2);
    }
  }

  @Test
  void settings_answeredWithOthers_startOptionsHold() {
    try (ScriptedEditor editor =
        ScriptedEditor.ofInitialize(
            "{\"capabilities\":{\"workspace\":{\"configuration\":true}},"
                + "\"initializationOptions\":{\"severities\":{\"missing-brace\":\"hint\"}}}")) {
      editor.expectAndAnswer("workspace/configuration", "[{\"trace\":{\"server\":\"off\"}}]");
      assertThat(severity(editor.open(URI, "chain a {\n"))).isEqualTo(4);
    }
  }

  @Test
  void settings_wrongValue_isToldAndTheLastGoodOneHolds() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, "chain a {\n");
      configure(editor, "{\"severities\":{\"missing-brace\":\"info\"}}");
      editor.expect(FINDINGS);
      configure(editor, "{\"severities\":{\"missing-brace\":\"loud\"}}");
      assertThat(editor.expect("window/showMessage").get("message").getAsString())
          .contains("`missing-brace`", "`error`", "loud");
      assertThat(severity(editor.expect(FINDINGS))).isEqualTo(3);
    }
  }

  private static void configure(ScriptedEditor editor, String settings) {
    editor.tell(
        "workspace/didChangeConfiguration", "{\"settings\":{\"chainwright\":" + settings + "}}");
  }

  private static int severity(JsonObject published) {
    return published
        .getAsJsonArray("diagnostics")
        .get(0)
        .getAsJsonObject()
        .get("severity")
        .getAsInt();
  }

  private static List<String> codes(JsonObject published) {
    List<String> codes = new ArrayList<>();
    for (JsonElement diagnostic : published.getAsJsonArray("diagnostics")) {
      codes.add(diagnostic.getAsJsonObject().get("code").getAsString());
    }
    return codes;
  }
}
