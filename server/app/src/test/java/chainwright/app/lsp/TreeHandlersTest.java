package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the tree alone answers: outline, folding, selection. */
class TreeHandlersTest {

  private static final String URI = "file:///r/a.chain";
  private static final String DOCUMENT = "{\"textDocument\":{\"uri\":\"" + URI + "\"}}";
  private static final String TEXT =
      """
      # Ferry night,
      # second verse.
      import "presets.chain"

      chain lead "Lead vocal" {
        high-pass  66 Hz 18 dB/oct
        > Only traffic
        > lives there.
        parallel {
          path "dry"
        }
      }
      bus mix { loudness -16 LUFS }
      """;

  @Test
  void outline_editorNests_isATree() {
    String nested =
        "{\"textDocument\":{\"documentSymbol\":{\"hierarchicalDocumentSymbolSupport\":true}}}";
    assertThat(outline(nested))
        .containsExactly(
            "import: \"presets.chain\"",
            "chain lead: \"Lead vocal\"",
            "  high-pass: 66 Hz 18 dB/oct",
            "  parallel: ",
            "    path: \"dry\"",
            "bus mix: ",
            "  loudness: -16 LUFS");
  }

  @Test
  void outline_editorDoesNotNest_isAList() {
    assertThat(outline("{}")).containsExactly("import", "chain lead", "bus mix");
  }

  private static List<String> outline(String capabilities) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(capabilities)) {
      editor.open(URI, TEXT);
      List<String> lines = new ArrayList<>();
      addSymbols(editor.ask("textDocument/documentSymbol", DOCUMENT), "", lines);
      return lines;
    }
  }

  private static void addSymbols(JsonElement symbols, String indent, List<String> lines) {
    for (JsonElement element : symbols.getAsJsonArray()) {
      JsonObject symbol = element.getAsJsonObject();
      String detail = symbol.has("detail") ? ": " + symbol.get("detail").getAsString() : "";
      lines.add(indent + symbol.get("name").getAsString() + detail);
      if (symbol.has("children")) {
        addSymbols(symbol.get("children"), indent + "  ", lines);
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // An editor that folds whole lines keeps the line of the closing brace in sight.
        "{\"lineFoldingOnly\":true}                  | 0-1 4-10 6-7 8-9",
        "{}                                          | 0-1 4-11 6-7 8-10",
        "{\"lineFoldingOnly\":true,\"rangeLimit\":2} | 0-1 4-10",
      })
  void folding_blocksNotesComments_foldAsTheEditorCan(String capabilities, String lines) {
    try (ScriptedEditor editor =
        ScriptedEditor.ofCapabilities(
            "{\"textDocument\":{\"foldingRange\":" + capabilities + "}}")) {
      editor.open(URI, TEXT);
      List<String> found = new ArrayList<>();
      for (JsonElement element :
          editor.ask("textDocument/foldingRange", DOCUMENT).getAsJsonArray()) {
        JsonObject range = element.getAsJsonObject();
        found.add(range.get("startLine") + "-" + range.get("endLine"));
      }
      assertThat(found).containsExactlyInAnyOrder(lines.split(" "));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "5, 15, 66 > 66 Hz > 5:2-5:28 > 4:24-11:1 > 4:0-11:1",
    "5, 4,  high-pass > 5:2-5:28 > 4:24-11:1 > 4:0-11:1",
  })
  void selection_insideAChain_growsOutwards(int line, int character, String steps) {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, TEXT);
      JsonObject selection =
          editor
              .ask(
                  "textDocument/selectionRange",
                  "{\"textDocument\":{\"uri\":\""
                      + URI
                      + "\"},\"positions\":[{\"line\":"
                      + line
                      + ",\"character\":"
                      + character
                      + "}]}")
              .getAsJsonArray()
              .get(0)
              .getAsJsonObject();
      List<String> found = new ArrayList<>();
      for (JsonObject at = selection; at.has("parent"); at = at.getAsJsonObject("parent")) {
        found.add(shown(at.getAsJsonObject("range")));
      }
      // The outermost is the file, the one before it the part of the file that is parsed by itself.
      assertThat(String.join(" > ", found)).startsWith(steps);
    }
  }

  /** The notation's own layout wins over a tab of eight. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "formatting       |                                                        | 1 2",
        "rangeFormatting  | \"range\":{\"start\":{\"line\":2,\"character\":0},\"end\":{\"line\":2,\"character\":4}}, | 2",
        "onTypeFormatting | \"ch\":\"\\n\",\"position\":{\"line\":1,\"character\":0},       | 1",
      })
  void layout_editorSendsTabsOfEight_isTheNotations(String method, String more, String lines) {
    String options = "\"options\":{\"tabSize\":8,\"insertSpaces\":false}";
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, "chain a {\nto  mix\nto  mix\n}\n");
      List<String> found = new ArrayList<>();
      for (JsonElement edit :
          editor
              .ask(
                  "textDocument/" + method,
                  "{\"textDocument\":{\"uri\":\""
                      + URI
                      + "\"},"
                      + (more == null ? "" : more)
                      + options
                      + "}")
              .getAsJsonArray()) {
        assertThat(edit.getAsJsonObject().get("newText").getAsString()).isEqualTo("  ");
        found.add(
            Integer.toString(
                number(edit.getAsJsonObject().getAsJsonObject("range"), "start", "line")));
      }
      assertThat(String.join(" ", found)).isEqualTo(lines);
    }
  }

  private static String shown(JsonObject range) {
    int[] at = {
      number(range, "start", "line"),
      number(range, "start", "character"),
      number(range, "end", "line"),
      number(range, "end", "character")
    };
    String line = TEXT.lines().toList().get(at[0]);
    return at[0] == at[2] && at[3] - at[1] < 12
        ? line.substring(at[1], at[3])
        : at[0] + ":" + at[1] + "-" + at[2] + ":" + at[3];
  }

  private static int number(JsonObject range, String end, String name) {
    return range.getAsJsonObject(end).get(name).getAsInt();
  }
}
