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

/** How proposals are told to an editor; which ones there are is tested where they are made. */
class CompletionsTest {

  private static final String URI = "file:///r/a.chain";
  private static final String HIGH_PASS = "chain a {\n  source lead-vocal\n  high-p|ass\n}\n";

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '\'',
      value = {
        // Kept behind the caret or replaced: the user's choice where there is one.
        "{}; 2:2 to 2:11 high-pass",
        "{\"insertReplaceSupport\":true}; 2:2 to 2:8 or 2:11 high-pass",
      })
  void edit_ofAWordThatGoesOn_replacesItToItsEnd(String item, String expected) {
    JsonObject edit = item(item, HIGH_PASS, "high-pass").getAsJsonObject("textEdit");
    assertThat(spelt(edit)).isEqualTo(expected);
  }

  /** Some editors end a word at a hyphen; what is replaced is told to them, so nothing doubles. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '\'',
      value = {
        "chain a {~  high-|~}; high-pass; 1:2 to 1:7",
        "chain a {~  de-|ess mode broadband~}; de-ess; 1:2 to 1:8",
        "chain a {~  source lead-v|ocal~}; lead-vocal; 1:9 to 1:19",
        "chain a {~  limiter look-a|head~}; look-ahead; 1:10 to 1:20",
        "chain a {~  limiter look-|~}; look-ahead; 1:10 to 1:15",
        "chain a {~  bell 1 kHz 3 dB deliberate narrow-bo|ost~}; narrow-boost; 1:29 to 1:41",
        "preset top-care {~}~chain a {~  apply top-c|are~}; top-care; 3:8 to 3:16",
        "chain a {~  to drum-|~}~bus drum-room {~}; drum-room; 1:5 to 1:10",
        "session {~  sample-r|ate 48 kHz~}; sample-rate; 1:2 to 1:13",
      })
  void edit_ofAWordWithHyphens_replacesAllOfIt(String marked, String label, String expected) {
    String text = marked.replace('~', '\n');
    assertThat(spelt(item("{}", text, label).getAsJsonObject("textEdit")))
        .isEqualTo(expected + " " + label);
  }

  /** Editors leave out what does not begin as typed, so what is meant is filed under it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '\'',
      value = {
        "chain a {~  cmop|ressor~}; compressor; cmop; 1:2 to 1:12",
        "chain a {~  compz|~}; compressor; compz; 1:2 to 1:7",
        "chain a {~  hpf|~}; high-pass; hpf; 1:2 to 1:5",
        "chain a {~  x|~}; source; x; 1:2 to 1:3",
        "chain a {~  source lad-vo|cal~}; lead-vocal; lad-vo; 1:9 to 1:18",
        "chain a {~  compressor atack|~}; attack; atack; 1:13 to 1:18",
        "chain a {~  bell 1 kHz -2 dB curve bilniear|~}; bilinear; bilniear; 1:25 to 1:33",
        "chain a {~  bell 1 kHz 3 dB deliberate naro|~}; narrow-boost; naro; 1:29 to 1:33",
        "chain a {~  to mx|~}~bus mix {~}; mix; mx; 1:5 to 1:7",
        "chian|; chain; chian; 0:0 to 0:5",
      })
  void misspeltWord_isCompletedByWhatItMayMean(
      String marked, String first, String filter, String place) {
    JsonObject item =
        ask("{}", URI, marked.replace('~', '\n')).getAsJsonArray("items").get(0).getAsJsonObject();
    assertThat(item.get("label").getAsString()).isEqualTo(first);
    String filed = item.has("filterText") ? item.get("filterText").getAsString() : first;
    assertThat(filed).isEqualTo(filter);
    assertThat(spelt(item.getAsJsonObject("textEdit"))).isEqualTo(place + " " + first);
  }

  @Test
  void misspeltWord_thatBeginsRight_isFoundByTheEditorItself() {
    JsonObject item = item("{}", "chain a {\n  bel|ll 1 kHz\n}", "bell");
    assertThat(item.has("filterText")).isFalse();
    assertThat(spelt(item.getAsJsonObject("textEdit"))).isEqualTo("1:2 to 1:7 bell");
  }

  /** A new name is no misspelt one. */
  @Test
  void newGroup_isNotTakenForAnother() {
    String marked = "chain a {\n  group kti|\n}\nchain b {\n  group kit\n}\n";
    JsonObject item = item("{}", marked, "kit");
    assertThat(item.has("filterText")).isFalse();
  }

  private static String spelt(JsonObject edit) {
    String text = " " + edit.get("newText").getAsString();
    if (edit.has("range")) {
      JsonObject range = edit.getAsJsonObject("range");
      return place(range, "start") + " to " + place(range, "end") + text;
    }
    return place(edit.getAsJsonObject("insert"), "start")
        + " to "
        + place(edit.getAsJsonObject("insert"), "end")
        + " or "
        + place(edit.getAsJsonObject("replace"), "end")
        + text;
  }

  private static String place(JsonObject range, String end) {
    JsonObject place = range.getAsJsonObject(end);
    return place.get("line") + ":" + place.get("character");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '\'',
      value = {
        "chain a {~  source lead-vocal~  |~}; high-pass; high-pass ${1:75 Hz} ${2:12 dB/oct}$0",
        "chain a {~  source bass~  |~}; compressor; compressor threshold ${1:-21 dBFS} ratio ${2:4:1} attack ${3:20 ms} release ${4:150 ms}$0",
        "chain a {~  |~}; bell; bell ${1:890 Hz} ${2:-2 dB} Q ${3:1.4}$0",
        "|; bus; bus ${1:name} \"${2:Title}\" {~\t$0~}",
        "chain a {~  |~}; multiband; multiband {~\tband below ${1:150 Hz} {~\t\t$0~\t}~\tband above ${1}~}",
        "chain a {~  bell 1 kHz deliberate |~}; narrow-boost; narrow-boost \"${1:why it is right here}\"$0",
        "chain a {~  |  # what~}; bell; bell",
      })
  void snippet_whereTheEditorTakesThem_hasStopsForWhatIsChosen(
      String marked, String label, String expected) {
    String text = marked.replace('~', '\n').replace("\\t", "\t");
    JsonObject item = item("{\"snippetSupport\":true}", text, label);
    String written = item.getAsJsonObject("textEdit").get("newText").getAsString();
    if (expected.equals(label)) {
      assertThat(written).startsWith(label);
    } else {
      assertThat(written).isEqualTo(expected.replace('~', '\n').replace("\\t", "\t"));
      assertThat(item.get("insertTextFormat").getAsInt()).isEqualTo(2);
    }
    JsonObject plain = item("{}", text, label);
    assertThat(plain.getAsJsonObject("textEdit").get("newText").getAsString()).isEqualTo(label);
    assertThat(plain.has("insertTextFormat")).isFalse();
  }

  @Test
  void documentation_ofAValue_saysTheRangeTheSourceAndWhereItIsFrom() {
    JsonObject item = item("{}", "chain a {\n  source lead-vocal\n  high-pass |\n}", "75 Hz");
    assertThat(item.get("detail").getAsString()).isEqualTo("cutoff, usual for lead vocal");
    assertThat(item.get("documentation").getAsString())
        .contains("For lead vocal: usual 60 to 110 Hz, cautious 40 to 80 Hz")
        .contains("extreme at or above 160 Hz")
        .contains("Source of the range: R. Izhaki, Mixing Audio (from memory), and");
  }

  /** A slope that exists but lies outside the usual range is not passed off as usual. */
  @Test
  void detail_ofAValueOutsideTheRange_saysSo() {
    String marked = "chain a {\n  source lead-vocal\n  high-pass 66 Hz |\n}";
    assertThat(item("{}", marked, "24 dB/oct").get("detail").getAsString())
        .isEqualTo("slope, uncommon for lead vocal");
    assertThat(item("{}", marked, "48 dB/oct").get("detail").getAsString())
        .isEqualTo("slope, extreme for lead vocal");
  }

  @Test
  void documentation_whereTheEditorReadsMarkdown_isMarkdownWithNothingLeftToMisread() {
    JsonObject documentation =
        item("{\"documentationFormat\":[\"markdown\"]}", "chain a {\n  |\n}", "spill")
            .getAsJsonObject("documentation");
    assertThat(documentation.get("kind").getAsString()).isEqualTo("markdown");
    assertThat(item("{}", "chain a {\n  |\n}", "spill").get("documentation").isJsonPrimitive())
        .isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "chain a {~  high-pass 6|; true",
        "chain a {~  high-pass |; true",
        "chain a {~  hi|; false",
        "chain a {~  source |; false",
      })
  void list_withNumbers_isAskedForAgainWithEveryDigit(String marked, boolean expected) {
    assertThat(ask("{}", URI, marked.replace('~', '\n')).get("isIncomplete").getAsBoolean())
        .isEqualTo(expected);
  }

  @Test
  void rule_foundOnTheLine_standsFirst() {
    String marked = "chain a {\n  source bass\n  high-pass 20 Hz 48 dB/oct deliberate |\n}";
    JsonObject first = ask("{}", URI, marked).getAsJsonArray("items").get(0).getAsJsonObject();
    assertThat(first.get("label").getAsString()).isEqualTo("over-steep-slope");
    assertThat(first.get("detail").getAsString()).startsWith("found on this line: ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      quoteCharacter = '\'',
      value = {
        "take \"|\"; takes/, ferry.wav",
        "take \"|; takes/, ferry.wav\"",
        "take |; \"takes/, \"ferry.wav\"",
        "take \"takes/|\"; takes/gull.flac",
        "take \"fer|\"; takes/, ferry.wav",
      })
  void take_inAFolder_isCompletedByItsRecordingsAndFolders(
      String marked, String expected, @TempDir Path folder) throws IOException {
    Files.createDirectories(folder.resolve("takes"));
    Files.createDirectories(folder.resolve(".hidden"));
    for (String name : List.of("ferry.wav", ".gull.wav", "notes.txt", "takes/gull.flac")) {
      Files.writeString(folder.resolve(name), "");
    }
    String uri = folder.resolve("a.chain").toUri().toString();
    assertThat(labels(ask("{}", uri, "chain a {\n  " + marked + "\n}\n")))
        .containsExactly(expected.split(", "));
  }

  @Test
  void import_inAFolder_isCompletedByFilesThatDoNotImportThisOne(@TempDir Path folder)
      throws IOException {
    Files.writeString(folder.resolve("presets.chain"), "preset guard {\n}\n");
    Files.writeString(folder.resolve("whole.chain"), "import \"a.chain\"\n");
    Files.writeString(folder.resolve("a.chain"), "");
    Files.writeString(folder.resolve("ferry.wav"), "");
    String uri = folder.resolve("a.chain").toUri().toString();
    assertThat(labels(ask("{}", uri, "import \"|\"\n"))).containsExactly("presets.chain");
  }

  @Test
  void take_inADocumentWithoutAFolder_hasNoFiles() {
    assertThat(labels(ask("{}", "untitled:one", "chain a {\n  take \"|\"\n}"))).isEmpty();
  }

  private static JsonObject item(String itemCapabilities, String marked, String label) {
    JsonObject answer = ask(itemCapabilities, URI, marked);
    for (JsonElement item : answer.getAsJsonArray("items")) {
      if (item.getAsJsonObject().get("label").getAsString().equals(label)) {
        return item.getAsJsonObject();
      }
    }
    throw new AssertionError(label + " is not among " + labels(answer));
  }

  private static List<String> labels(JsonObject answer) {
    List<String> labels = new ArrayList<>();
    for (JsonElement item : answer.getAsJsonArray("items")) {
      labels.add(item.getAsJsonObject().get("label").getAsString());
    }
    return labels;
  }

  private static JsonObject ask(String itemCapabilities, String uri, String marked) {
    int caret = marked.indexOf('|');
    String before = marked.substring(0, caret);
    int line = (int) before.chars().filter(c -> c == '\n').count();
    int character = caret - (before.lastIndexOf('\n') + 1);
    String capabilities =
        "{\"textDocument\":{\"completion\":{\"completionItem\":" + itemCapabilities + "}}}";
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities(capabilities)) {
      editor.open(uri, marked.replace("|", ""));
      return editor
          .ask(
              "textDocument/completion",
              "{\"textDocument\":{\"uri\":\""
                  + uri
                  + "\"},\"position\":{\"line\":"
                  + line
                  + ",\"character\":"
                  + character
                  + "}}")
          .getAsJsonObject();
    }
  }
}
