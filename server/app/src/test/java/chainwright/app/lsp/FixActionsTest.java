package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FixActionsTest {

  private static final String URI = "file:///r/a.chain";
  private static final String ACTIONS =
      "\"codeAction\":{\"codeActionLiteralSupport\":{\"codeActionKind\":{\"valueSet\":[]}}}";

  /** One fault that is mended without a choice, twice: signs that mean nothing. */
  private static final String TEXT = "chain a {\n  to mix;\n}\nchain b {\n  to mix;\n}\n";

  @ParameterizedTest
  @CsvSource({
    "1, 8, quickfix,              1",
    "1, 9, quickfix,              1",
    "1, 3, quickfix,              1",
    "2, 0, quickfix,              0",
    "1, 8, source.fixAll,         1",
    "0, 0, source.fixAll,         1",
    "0, 0, source,                1",
    "1, 8, refactor,              0",
    "1, 8, '',                    1",
  })
  void actions_atACaret_areThoseAskedFor(int line, int character, String only, int count) {
    try (ScriptedEditor editor =
        ScriptedEditor.ofCapabilities("{\"textDocument\":{" + ACTIONS + "}}")) {
      editor.open(URI, TEXT);
      assertThat(actions(editor, line, character, only)).hasSize(count);
    }
  }

  @Test
  void quickFix_editorVersionsEdits_namesTheVersion() {
    try (ScriptedEditor editor =
        ScriptedEditor.ofCapabilities(
            "{\"workspace\":{\"workspaceEdit\":{\"documentChanges\":true}},\"textDocument\":{"
                + ACTIONS
                + "}}")) {
      editor.open(URI, TEXT);
      JsonObject action = actions(editor, 1, 8, "quickfix").get(0).getAsJsonObject();
      JsonObject change =
          action.getAsJsonObject("edit").getAsJsonArray("documentChanges").get(0).getAsJsonObject();
      assertThat(change.getAsJsonObject("textDocument").get("version").getAsInt()).isEqualTo(1);
      assertThat(
              action
                  .getAsJsonArray("diagnostics")
                  .get(0)
                  .getAsJsonObject()
                  .get("code")
                  .getAsString())
          .isEqualTo("stray-character");
    }
  }

  @Test
  void fixAll_twoFaults_mendsBoth() {
    try (ScriptedEditor editor =
        ScriptedEditor.ofCapabilities("{\"textDocument\":{" + ACTIONS + "}}")) {
      editor.open(URI, TEXT);
      JsonObject action = actions(editor, 0, 0, "source.fixAll").get(0).getAsJsonObject();
      assertThat(action.get("title").getAsString())
          .isEqualTo("Mend 2 faults without changing the sound");
      assertThat(action.getAsJsonObject("edit").getAsJsonObject("changes").getAsJsonArray(URI))
          .hasSize(2);
    }
  }

  /** What gives a meaning to what had none is preferred; what changes the sound never is. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "high-pass 66              | (can be read then)    | true",
        "high-pass 66 Hz 36 dB/oct | (changes the sound)   | false",
      })
  void quickFix_thatDoesNotKeepTheSound_saysSoAndIsNotAppliedToAll(
      String line, String end, boolean isPreferred) {
    try (ScriptedEditor editor =
        ScriptedEditor.ofCapabilities("{\"textDocument\":{" + ACTIONS + "}}")) {
      editor.open(URI, "chain a {\n  " + line + "\n}\n");
      JsonObject action = actions(editor, 1, 13, "quickfix").get(0).getAsJsonObject();
      assertThat(action.get("title").getAsString()).endsWith(end);
      assertThat(action.get("isPreferred").getAsBoolean()).isEqualTo(isPreferred);
      assertThat(actions(editor, 1, 13, "source.fixAll")).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2 | 5 | refactor         | Write the Q as its width in octaves: `1 oct`",
        "2 | 5 | refactor.rewrite | Write the Q as its width in octaves: `1 oct`",
        "2 | 5 | ''               | Write the Q as its width in octaves: `1 oct`",
        "2 | 5 | quickfix         | ''",
        "0 | 2 | refactor         | Put the stages into the usual order: `high-pass`, `bell`,"
            + " `compressor` (changes the sound)",
      })
  void rewrite_atACaret_isOfferedAndNeverPreferred(
      int line, int character, String only, String title) {
    try (ScriptedEditor editor =
        ScriptedEditor.ofCapabilities("{\"textDocument\":{" + ACTIONS + "}}")) {
      editor.open(
          URI,
          """
          chain a {
            compressor threshold -20 dBFS ratio 2:1
            bell 3 kHz -2 dB Q 1.4142
            high-pass 60 Hz 12 dB/oct
          }
          """);
      JsonArray found = actions(editor, line, character, only);
      assertThat(found).hasSize(title.isEmpty() ? 0 : 1);
      found.forEach(
          one -> {
            JsonObject action = one.getAsJsonObject();
            assertThat(action.get("title").getAsString()).isEqualTo(title);
            assertThat(action.get("kind").getAsString()).isEqualTo("refactor.rewrite");
            assertThat(action.get("isPreferred").getAsBoolean()).isFalse();
          });
    }
  }

  /** The title says what happens to the text. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "to mix;                      | Remove `;`",
        "high-pass 60 Hz 12 dB/oct // | Write `#` instead of `//`",
        "during 0:1 to 0:2 { } gain 2 dB | Begin a new line with `gain`",
        "bell 3 kHz -2 dB Q1.4        | Put a blank between `Q` and `1.4` (can be read then)",
      })
  void quickFix_ofThePunctuation_saysWhatItDoesToTheText(String line, String title) {
    try (ScriptedEditor editor =
        ScriptedEditor.ofCapabilities("{\"textDocument\":{" + ACTIONS + "}}")) {
      String text = "chain a {\n  " + line + "\n}\n";
      editor.open(URI, text);
      int end = 2 + line.strip().length();
      List<String> titles = new ArrayList<>();
      for (int character = 2; character <= end; character++) {
        actions(editor, 1, character, "quickfix")
            .forEach(one -> titles.add(one.getAsJsonObject().get("title").getAsString()));
      }
      assertThat(titles).contains(title);
    }
  }

  private static JsonArray actions(ScriptedEditor editor, int line, int character, String only) {
    String caret = "{\"line\":" + line + ",\"character\":" + character + "}";
    String kinds = only.isEmpty() ? "" : ",\"only\":[\"" + only + "\"]";
    return editor
        .ask(
            "textDocument/codeAction",
            "{\"textDocument\":{\"uri\":\""
                + URI
                + "\"},\"range\":{\"start\":"
                + caret
                + ",\"end\":"
                + caret
                + "},\"context\":{\"diagnostics\":[]"
                + kinds
                + "}}")
        .getAsJsonArray();
  }
}
