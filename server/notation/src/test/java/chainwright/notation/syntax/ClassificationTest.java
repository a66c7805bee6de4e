package chainwright.notation.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClassificationTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "bell 3.1 kHz -2 dB Q 2|STATEMENT NUMBER UNIT NUMBER UNIT SETTING NUMBER",
        "chain lead \"Lead\" { }|STATEMENT NAME STRING PUNCTUATION PUNCTUATION",
        "bell as bite bypassed # c|STATEMENT SETTING NAME SETTING COMMENT",
        "de-ess band 5 to 9 kHz|STATEMENT SETTING NUMBER PUNCTUATION NUMBER UNIT",
        "send plate -14 dB post-fader|STATEMENT NAME NUMBER UNIT SETTING",
        "note \"n\"|STATEMENT NOTE",
        "> prose|NOTE",
        "x deliberate rule \"r\"|STATEMENT SETTING NAME STRING",
        "x key { y }|STATEMENT SETTING PUNCTUATION STATEMENT PUNCTUATION",
        "alignment 0 dBu = -18 dBFS|STATEMENT NUMBER UNIT PUNCTUATION NUMBER UNIT",
        "x ; 3|STATEMENT NUMBER",
        "x \"y {|STATEMENT STRING STRING",
        "x \"y {~... z|STATEMENT STRING STRING PUNCTUATION SETTING",
        "chain as as|STATEMENT NAME SETTING",
      })
  void of_statement_namesEachToken(String text, String expected) {
    Section section = SyntaxTree.parse(text.replace('~', '\n')).sections().get(0);
    assertThat(
            Classification.of(section).stream()
                .map(entry -> entry.tokenClass().name())
                .collect(Collectors.joining(" ")))
        .isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource("chain a { bell 3.1k to 5 kHz # c}")
  void of_statement_spansAreThoseOfTheTokens(String text) {
    Section section = SyntaxTree.parse(text).sections().get(0);
    assertThat(
            Classification.of(section).stream()
                .map(entry -> text.substring(entry.span().start(), entry.span().end()))
                .collect(Collectors.joining("|")))
        .isEqualTo("chain|a|{|bell|3.1|k|to|5|kHz|# c}");
  }
}
