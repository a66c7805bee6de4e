package chainwright.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A careful vocal chain gives no warning, and each wrong turn from it gives its own finding. */
class VocalChainTest {

  private static final String DE_ESS =
      "  de-ess band 5.5 to 9 kHz threshold -30 dBFS max-reduction 6 dB\n";
  private static final String HIGH_PASS = "  high-pass 66 Hz 18 dB/oct\n";
  private static final String COMPRESSOR =
      "  compressor threshold -21 dBFS ratio 3:1 attack 12 ms release 90 ms knee 6 dB\n";
  private static final String BODY = "  bell 300 Hz -2 dB Q 1.2\n";
  private static final String TOP = "  high-shelf 12 kHz +2 dB\n";
  private static final String GOOD =
      "chain voice \"Lead voice\" {\n"
          + "  source lead-vocal\n"
          + "  spill acoustic-guitar\n\n"
          + DE_ESS
          + HIGH_PASS
          + COMPRESSOR
          + "  bell 3.1 kHz -2.5 dB Q 2.2\n"
          + BODY
          + "  bell 180 Hz +1 dB Q 1\n"
          + TOP
          + "}\n";

  @Test
  void findings_carefulChain_holdNothing() {
    JudgedText judged = JudgedText.of(GOOD);
    assertThat(judged.textFaults()).isEmpty();
    assertThat(judged.findings()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "steep slope, steep-filter-on-spill",
    "compressor first, compress-before-de-ess",
    "top lift, bright-boost-after-de-ess",
    "two high-passes, stacked-high-passes",
    "lift beyond hearing, boost-beyond-hearing",
    "body cut away, wide-deep-cut",
    "body cut away very widely, wide-deep-cut",
    "a gentle second high-pass, stacked-high-passes",
    "a gentle second high-pass, steep-filter-on-spill",
    "a lower second high-pass, steep-filter-on-spill"
  })
  void findings_eachWrongTurn_namesItAndItsFixClearsIt(String turn, String code) {
    JudgedText judged = JudgedText.of(wrong(turn));
    assertThat(judged.textFaults()).isEmpty();
    assertThat(judged.findings(code)).hasSize(1);
    Finding finding = judged.findings(code).get(0);
    assertThat(finding.fixes()).isNotEmpty();
    for (Fix fix : finding.fixes()) {
      JudgedText mended = judged.with(fix);
      assertThat(mended.textFaults()).isEmpty();
      assertThat(mended.findings(code)).as("%s%n%s", fix.title(), mended.text()).isEmpty();
      assertThat(mended.warnings()).as("%s%n%s", fix.title(), mended.text()).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource({"lead-vocal, WARNING", "acoustic-guitar, WARNING", "kick, INFO"})
  void cut_wideAndDeep_isAWarningExceptOnDrumsAndClearedByOneFix(String source, Severity severity) {
    JudgedText judged =
        JudgedText.of("chain c {\n  source " + source + "\n  bell 300 Hz -8 dB Q 0.4\n}\n");
    assertThat(judged.findings("wide-deep-cut"))
        .extracting(Finding::severity)
        .containsExactly(severity);
    assertThat(judged.findings("wide-deep-cut").get(0).fixes())
        .hasSize(2)
        .allSatisfy(fix -> assertThat(judged.with(fix).findings()).as(fix.title()).isEmpty());
  }

  private static String wrong(String turn) {
    return switch (turn) {
      case "steep slope" -> GOOD.replace("18 dB/oct", "36 dB/oct");
      case "compressor first" -> GOOD.replace(COMPRESSOR, "").replace(DE_ESS, COMPRESSOR + DE_ESS);
      case "top lift" -> GOOD.replace(TOP, "  high-shelf 5 kHz +4 dB\n");
      case "lift beyond hearing" -> GOOD.replace(TOP, "  bell 18 kHz +4 dB Q 2\n");
      case "body cut away" -> GOOD.replace(BODY, "  bell 300 Hz -10 dB Q 0.6\n");
      case "body cut away very widely" -> GOOD.replace(BODY, "  bell 300 Hz -8 dB Q 0.4\n");
      case "a gentle second high-pass" ->
          GOOD.replace(HIGH_PASS, HIGH_PASS + "  high-pass 60 Hz 12 dB/oct\n");
      case "a lower second high-pass" ->
          GOOD.replace(HIGH_PASS, "  high-pass 40 Hz 12 dB/oct\n" + HIGH_PASS);
      case "two high-passes" -> GOOD.replace(HIGH_PASS, HIGH_PASS + HIGH_PASS);
      default -> throw new IllegalArgumentException("no such turn: " + turn);
    };
  }
}
