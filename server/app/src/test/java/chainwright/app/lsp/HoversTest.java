package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HoversTest {

  private static final String URI = "file:///r/a.chain";
  private static final String TEXT =
      """
      session "Ferry night" {
        sample-rate 48 kHz
      }
      chain lead "Lead vocal" {
        source lead-vocal
        high-pass 66 Hz 18 dB/oct
          note "Only traffic lives down there, <b>really</b>."
        compressor threshold -21 dBFS ratio 3:1 knee 0 dB
        bell 3.1 kHz -2.5 dB Q 2.2
        apply guard
      }
      preset guard {
        high-pass 60 Hz 12 dB/oct
      }
      """;

  /**
   * The numbers follow from the definitions: a Butterworth high-pass of order 3 is 3.01 dB down at
   * its cutoff and 10 log(1 + (66 / 82.4)^6) = 1.02 dB at E2; 3 dB over a threshold at 3:1 with no
   * knee leaves 1 dB, so 2 dB are taken. Source: Butterworth's formula; GMR eq. 4.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "5 | 4 | \u22123.0 dB at 66 Hz, 18 dB/oct, \u22121.0 dB at the usual lowest note E2",
        "7 | 4 | 2 dB of gain reduction at \u221218 dBFS, 3:1 from \u221221 dBFS",
        "8 | 4 | \u22122.5 dB at 3.1 kHz",
        "5 | 19 | 18 dB/oct",
        "4 | 10 | Lead vocal",
        "3 | 7 | 4 stages",
        "9 | 9 | guard",
        "9 | 3 | apply guard**: \u221219.1 dB at 20 Hz",
        "12 | 4 | \u22123.0 dB at 60 Hz",
      })
  void hover_onAWord_answersInItsFirstLine(int line, int character, String answer) {
    String first = hover("\"text\"", line, character).lines().findFirst().orElse("");
    assertThat(first).contains(answer);
  }

  @Test
  void hover_nameThatIsNotDefined_saysWhatItMayHaveMeant() {
    try (ScriptedEditor editor = ScriptedEditor.ofCapabilities("{}")) {
      editor.open(URI, "chain a {\n  spill gutar\n}\nchain guitar {\n}\n");
      String markdown =
          editor
              .ask(
                  "textDocument/hover",
                  "{\"textDocument\":{\"uri\":\""
                      + URI
                      + "\"},\"position\":{\"line\":1,\"character\":9}}")
              .getAsJsonObject()
              .getAsJsonObject("contents")
              .get("value")
              .getAsString();
      assertThat(markdown).contains("`gutar`").contains("Did you mean `guitar`?");
    }
  }

  @Test
  void hover_pictureAskedFor_isAnImageThatVisualEditorsShow() {
    String markdown = hover("\"svg\"", 5, 4);
    assertThat(markdown).contains("](data:image/svg+xml;base64,");
    assertThat(markdown.length()).isLessThan(40_000);
  }

  @Test
  void hover_textAskedFor_isAPlotInABareFence() {
    assertThat(hover("\"text\"", 5, 4)).contains("\n```\n").doesNotContain("data:image");
  }

  @Test
  void hover_noteWithMarkup_isEscaped() {
    assertThat(hover("\"text\"", 5, 4)).contains("&lt;b>really").doesNotContain("<b>");
  }

  @Test
  void hover_range_namesItsSource() {
    assertThat(hover("\"text\"", 5, 13))
        .contains("usual")
        .contains("Source: R. Izhaki, Mixing Audio (from memory), and");
  }

  private static String hover(String plots, int line, int character) {
    try (ScriptedEditor editor =
        ScriptedEditor.ofInitialize(
            "{\"capabilities\":{},\"initializationOptions\":{\"plots\":" + plots + "}}")) {
      editor.open(URI, TEXT);
      return editor
          .ask(
              "textDocument/hover",
              "{\"textDocument\":{\"uri\":\""
                  + URI
                  + "\"},\"position\":{\"line\":"
                  + line
                  + ",\"character\":"
                  + character
                  + "}}")
          .getAsJsonObject()
          .getAsJsonObject("contents")
          .get("value")
          .getAsString();
    }
  }
}
