package chainwright.notation.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.text.TextEdit;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SyntaxTreeTest {

  private static final String TWO_CHAINS =
      """
      # Ferry night
      chain lead {
        source lead-vocal
        high-pass 66 Hz 18 dB/oct
        > Only traffic lives
        > down there.
        bell 3.1k −2.5 dB Q 2.2 # hurts
          ... as bite
        during 0:31.2 to 0:31.8 { bell 2.9kHz -3 dB Q 3 }
      }

      bus mix { loudness -16 LUFS }
      """;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\r\n\r",
        "chain",
        "chain a {",
        "}",
        "\"",
        "chain a {\n  bell 1 kHz\n",
        "> prose\n> more\nbell",
        "... bell",
        "\ufeffchain a { bell 3,1 kHz }",
        "{{{{",
        "chain a { \ud83d\ude00 bell }"
      })
  void parse_anyText_givesItBack(String text) {
    checkGivesBack(text);
  }

  @Test
  void parse_twoChains_givesBackTextWithoutTroubles() {
    checkGivesBack(TWO_CHAINS);
    assertThat(SyntaxTree.parse(TWO_CHAINS).sections())
        .hasSize(3)
        .allSatisfy(section -> assertThat(section.troubles()).isEmpty());
  }

  @Test
  void withText_editInOneSection_keepsTheOthers() {
    SyntaxTree before = SyntaxTree.parse(TWO_CHAINS);
    SyntaxTree after = before.withText(TWO_CHAINS.replace("66 Hz", "80 Hz"));
    assertThat(after.sections().get(0)).isSameAs(before.sections().get(0));
    assertThat(after.sections().get(1)).isNotSameAs(before.sections().get(1));
    assertThat(after.sections().get(2)).isSameAs(before.sections().get(2));
  }

  @Test
  void parse_deeplyNested_doesNotOverflow() {
    checkGivesBack("a {".repeat(100_000));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "chain a {\\n  bell 1 kHz\\n | missing-brace",
        "chain a {\\n}\\n}\\n | surplus-brace",
        "chain a \"x\\n | unterminated-string",
        "chain a {\\n  66 Hz\\n} | word-expected",
        "chain a {\\n\\n  ... bell\\n} | continues-nothing",
        "chain a { bell 1 kHz; } | stray-character",
        "chain a {\\n  parallel {\\n    path \"x\"\\n}\\n | missing-brace",
        "chain a\\n{\\n  bell 1 kHz\\n}\\n | brace-on-its-own-line",
        "chain a # c\\n  {\\n}\\n | brace-on-its-own-line",
        "{\\n}\\n | block-of-nothing",
        "chain a {\\n  x { y } bypassed\\n}\\n | text-after-brace",
        "// c\\nchain a { }\\n | slash-comment",
        "chain a { } // c\\n | slash-comment",
        "chain a { compressor 3 ms ... ratio 3:1 } | stray-character",
        "chain a { gain - 3 dB } | stray-character",
        "chain a { band 5 - 9 kHz } | stray-character",
        "chain a { band 5-9 kHz } | range-with-dash",
        "chain a { gain+3 dB } | missing-blank",
        "chain a { bell Q2.2 } | missing-blank",
        "chain a { bell 3.1.5 kHz } | stray-character",
      })
  void parse_brokenText_saysWhatIsWrong(String text, String code) {
    List<String> codes =
        SyntaxTree.parse(text.replace("\\n", "\n")).sections().stream()
            .flatMap(section -> section.troubles().stream())
            .map(trouble -> trouble.fault().code())
            .toList();
    assertThat(codes).containsExactly(code);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "chain a # c\\n  {\\n}\\n | chain a { # c\\n}\\n",
        "chain a {\\n  x { y } z\\n} | chain a {\\n  x { y }\\n  z\\n}",
        "chain a\\n  x\\n | chain a {\\n  x\\n}\\n",
        "chain a {\\n  during 0:1 to 0:2\\n    x\\n  y\\n} | chain a {\\n  during 0:1 to 0:2 {\\n    x\\n  }\\n  y\\n}",
        "chain a {\\n  parallel\\n    path\\n    path\\n  }\\n} | chain a {\\n  parallel {\\n    path\\n    path\\n  }\\n}",
        "chain a {\\n  parallel\\n  path\\n  path\\n  y\\n} | chain a {\\n  parallel {\\n  path\\n  path\\n  }\\n  y\\n}",
        "chain a {\\n  mid-side # c\\n    mid { x }\\n\\n  y\\n} | chain a {\\n  mid-side { # c\\n    mid { x }\\n  }\\n\\n  y\\n}",
        "chain a {\\n  multiband {\\n    band\\n      x\\n    band\\n  }\\n} | chain a {\\n  multiband {\\n    band {\\n      x\\n    }\\n    band\\n  }\\n}",
        "chain a {\\n  insert\\n    x\\n  }\\n} | chain a {\\n  insert {\\n    x\\n  }\\n}",
        "chain a {\\n  gate\\n    side-chain { x }\\n  y\\n} | chain a {\\n  gate {\\n    side-chain { x }\\n  }\\n  y\\n}",
        "chain a { } // c | chain a { } # c",
        "chain a {\\n  x 3 ms ... y\\n} | chain a {\\n  x 3 ms \\n    ... y\\n}",
        "gain - 3 dB | gain -3 dB",
        "band 5 - 9 kHz | band 5 to 9 kHz",
        "band 5\u20139 kHz | band 5 to 9 kHz",
        "gain+3 dB | gain +3 dB",
        "bell Q2.2 | bell Q 2.2",
        "bell 3.1.5 kHz | bell 3.15 kHz",
        "gain 3 dB; | gain 3 dB",
      })
  void parse_brokenText_canBeMended(String text, String mended) {
    Section.Trouble trouble =
        SyntaxTree.parse(text.replace("\\n", "\n")).sections().get(0).troubles().get(0);
    String after = TextEdit.apply(text.replace("\\n", "\n"), trouble.mend());
    assertThat(after).isEqualTo(mended.replace("\\n", "\n"));
    assertThat(SyntaxTree.parse(after).sections().get(0).troubles()).isEmpty();
  }

  @Test
  void parse_braceOnItsOwnLine_belongsToTheStatementAbove() {
    Block block = Block.of(SyntaxTree.parse("chain a\n{\n  gain -1 dB\n}\n").sections().get(0));
    Statement statement = ((Block.Line) block.members().get(0)).statement();
    assertThat(block.members()).hasSize(1);
    assertThat(statement.block().orElseThrow().members()).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({"bell 3.1k -2 dB Q 2.2, 4", "de-ess band 5.5 to 9 kHz, 2", "ratio 3:1, 1"})
  void statement_items_areGrouped(String text, int count) {
    Block block = Block.of(SyntaxTree.parse(text).sections().get(0));
    Statement statement = ((Block.Line) block.members().get(0)).statement();
    assertThat(statement.items()).hasSize(count);
    assertThat(statement.head()).isPresent();
  }

  private static void checkGivesBack(String text) {
    SyntaxTree tree = SyntaxTree.parse(text);
    StringBuilder whole = new StringBuilder();
    tree.sections().forEach(section -> section.root().appendText(whole));
    assertThat(whole).hasToString(text);
  }
}
