package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where the carets stand: {@code <} and {@code >} enclose what is meant. */
class SourceLineTest {

  /**
   * Wide characters take two cells and combining ones none. Source: Unicode Standard Annex 11, East
   * Asian Width, W and F; a tab goes to the next of every fourth cells (ours).
   */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "  <bell> 1 kHz|40|  bell 1 kHz|2|4",
        "\t<bell>\t1 kHz|40|    bell    1 kHz|4|4",
        "  \t<bell>|40|    bell|4|4",
        "\u97f3\u58f0 <bell>|40|\u97f3\u58f0 bell|5|4",
        "<\u97f3\u58f0> bell|40|\u97f3\u58f0 bell|0|4",
        "e\u0301e <bell>|40|e\u0301e bell|3|4",
        "\ud83c\udfb8 <bell>|40|\ud83c\udfb8 bell|3|4",
        "bell <>|40|bell |5|1",
        "a\u001b[2J <bell>|40|a\ufffd[2J bell|6|4",
        "0123456789<ab>0123456789|12|\u20266789ab0123\u2026|5|2",
        "<ab>0123456789|6|ab012\u2026|0|2",
        "0123456789<ab>|8|\u202689ab|3|2",
        "<0123456789>|6|01234\u2026|0|5",
      })
  void line_marked_pointsAtTheSameCells(
      String marked, int width, String text, int before, int cells) {
    int start = marked.indexOf('<');
    int end = marked.indexOf('>') - 1;
    String line = marked.replace("<", "").replace(">", "");
    SourceLine shown = SourceLine.of(line, start, end, width);
    assertThat(shown).isEqualTo(new SourceLine(text, before, cells));
  }
}
