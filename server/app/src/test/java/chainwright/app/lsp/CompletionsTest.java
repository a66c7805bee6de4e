package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CompletionsTest {

  private static final String URI = "file:///r/a.chain";

  /** The caret stands at {@code |}; the first proposals and one that must not come are named. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "ch|; import, chain; bell",
        "chain a {~  source lead-vocal~  high-pass 66 Hz 18 dB/oct~  |; bell, compressor; fader",
        "chain a {~  |; source, high-pass; tempo",
        "session \"x\" {~  |; sample-rate, tempo; bell",
        "chain a {~  source lead-vocal~  high-pass |; 75 Hz, 12 dB/oct, butterworth; threshold",
        "chain a {~  source lead-vocal~  high-pass 66 Hz |; 12 dB/oct, linkwitz-riley; 75 Hz",
        "chain a {~  source bass~  compressor threshold -20 dBFS ratio |; 4:1, 2:1; attack",
        "chain a {~  compressor |; threshold, ratio, attack, deliberate; 3:1",
        "chain a {~  compressor detector |; peak, rms, programme; ratio",
        "chain a {~  compressor threshold -20 dBFS |; ratio, attack; -30 dBFS",
        "chain a {~  compressor threshold -20 dBFS~    ... |; ratio, attack; bell",
        "preset guard {~}~chain a {~  apply |; guard; bell",
        "bus vox {~}~chain a {~  to |; vox; a",
        "chain a {~  source |; lead-vocal, bass; bell",
        "chain a {~  bell 1 kHz deliberate |; over-steep-slope; bell",
        "chain a {~  parallel {~    |; path; bell",
        "chain a {~  during 0:01 to 0:02 { |; bell; source",
        "chain a {~  bell 300 Hz # |; ; bell",
        "chain a {~  note \"|; ; bell",
      })
  void proposals_atACaret_areThoseThatFit(String marked, String offered, String withheld) {
    List<String> labels = labels(marked.replace('~', '\n'));
    if (offered == null) {
      assertThat(labels).isEmpty();
    } else {
      assertThat(labels).contains(offered.split(", "));
      assertThat(labels).doesNotContain(withheld);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "chain a {~  compressor threshold -20 dBFS~  |; de-ess; high-shelf",
        "chain a {~  source lead-vocal~  high-pass |; 110 Hz; 75 Hz",
      })
  void proposals_usualOnesStandFirst(String marked, String later, String earlier) {
    List<String> labels = labels(marked.replace('~', '\n'));
    assertThat(labels.indexOf(earlier)).isBetween(0, labels.indexOf(later));
  }

  private static List<String> labels(String marked) {
    int caret = marked.indexOf('|');
    String before = marked.substring(0, caret);
    int line = (int) before.chars().filter(c -> c == '\n').count();
    int character = caret - (before.lastIndexOf('\n') + 1);
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, marked.replace("|", ""));
      List<String> labels = new ArrayList<>();
      for (JsonElement item :
          editor
              .ask(
                  "textDocument/completion",
                  "{\"textDocument\":{\"uri\":\""
                      + URI
                      + "\"},\"position\":{\"line\":"
                      + line
                      + ",\"character\":"
                      + character
                      + "}}")
              .getAsJsonArray()) {
        JsonObject object = item.getAsJsonObject();
        labels.add(object.get("label").getAsString());
      }
      return labels;
    }
  }
}
