package chainwright.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is offered for a value outside the limits: what is right but for a slip, else the limit. */
class SlippedSignTest {

  @ParameterizedTest
  @CsvSource({
    "gate threshold -50 dBFS range -12 dB, Write `12 dB`",
    "de-ess band 5 to 9 kHz threshold -30 dBFS max-reduction -5 dB, Write `5 dB`",
    "high-pass 80 Hz -12 dB/oct, Write `12 dB/oct`",
    "compressor threshold +20 dBFS ratio 2:1, Write `-20 dBFS`",
    "expander threshold -50 dBFS ratio 0.5:1, Write `2:1`",
    "gate threshold -50 dBFS range -200 dB, Write `0 dB`",
    "gate threshold -50 dBFS range 200 dB, Write `100 dB`"
  })
  void valueOutsideLimits_fix_undoesTheSlipElseWritesTheLimit(String line, String title) {
    JudgedText judged = JudgedText.of("chain c {\n  " + line + "\n}\n");
    assertThat(judged.findings())
        .filteredOn(one -> one.code().equals("outside-limits"))
        .flatExtracting(Finding::fixes)
        .extracting(Fix::title)
        .containsExactly(title);
  }

  @ParameterizedTest
  @CsvSource({
    "insert \"box\" +4 dBu -10 dBu 3 ms, insert-latency-unmeasured",
    "insert \"box\" send +40 return 0 dBu latency 3 ms, device-overdriven",
    "insert \"box\" send +10 dBu return -10 latency 3 ms { gain +12 dB }, return-converter-overload"
  })
  void insert_withAnUnreadSetting_isNotJudgedByItsDefault(String line, String code) {
    JudgedText judged =
        JudgedText.of(
            "session \"S\" {\n  alignment 0 dBu = -18 dBFS\n}\nchain c {\n  " + line + "\n}\n");
    assertThat(judged.textFaults()).isNotEmpty();
    assertThat(judged.findings()).extracting(Finding::code).doesNotContain(code);
  }
}
