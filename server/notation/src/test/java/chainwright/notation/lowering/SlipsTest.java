package chainwright.notation.lowering;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.SyntaxTree;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is offered for values that are written in another way than the notation's. */
class SlipsTest {

  private static final SectionReader READER = new SectionReader(Catalogue.load());

  // −10 dBV is −7.78 dBu: 20 lg(1 V / 0.774597 V) is 2.218 dB, by the definitions of both units.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bell 300 Hz cut 3 dB Q 1|Write `-3 dB`",
        "bell 300 Hz cut -3 dB Q 1|Write `-3 dB`",
        "bell 300 Hz boost 3 dB Q 1|Write `+3 dB`",
        "bell 300 Hz 3 dB cut Q 1|Write `-3 dB`",
        "bell 300 Hz -3 dB Q -2|Write `2`",
        "reverb 2 s 30% wet|Write `blend 30 %`",
        "de-ess 7 kHz threshold -30 dBFS|Write `band 4.9 to 9.9 kHz`",
        "high-pass 80 Hz 12 dB per octave|Write `dB/oct`",
        "high-pass 80 Hz slope 12 dB per octave|Write `dB/oct`",
        "expander threshold -50 dBFS ratio 1:2|Write `2:1`",
        "compressor threshold -20 dBFS ratio 1:3|Write `3:1`",
        "compressor threshold -20 dBFS ratio 3:2|Write `1.5:1`",
        "insert \"box\" return -10 dBV|Write `-7.78 dBu`",
        "insert \"box\" send 0 dBV|Write `2.22 dBu`",
      })
  void line_writtenInAnotherWay_isOfferedOneReading(String line, String fix) {
    assertThat(fixes("chain c {\n  " + line + "\n}\n")).containsExactly(fix);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "bell 300 Hz cut +3 dB Q 1",
        "bell 300 Hz boost -3 dB Q 1",
        "bell 300 Hz cut Q 1",
        "compressor threshold 0 dBu ratio 2:1",
        "bell 300 Hz -3 dB Q 1 oct",
      })
  void line_whoseMeaningIsUncertain_isOfferedNothing(String line) {
    assertThat(fixes("chain c {\n  " + line + "\n}\n")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"44.1, Write `44.1 kHz`", "48, Write `48 kHz`", "48000, Write `48000 Hz`"})
  void sampleRate_withoutUnit_isOfferedOneThatIsARate(String number, String fix) {
    assertThat(fixes("session \"S\" {\n  sample-rate " + number + "\n}\n")).containsExactly(fix);
  }

  private static List<String> fixes(String text) {
    List<Finding> findings =
        SourceFile.of("a.chain", SyntaxTree.parse(text), READER).sections().get(0).findings();
    assertThat(findings).isNotEmpty();
    return findings.stream().flatMap(one -> one.fixes().stream()).map(Fix::title).toList();
  }
}
