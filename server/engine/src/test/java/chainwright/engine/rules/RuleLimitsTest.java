package chainwright.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.diagnostic.Finding;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What rules must not say, and what they must not say twice. */
class RuleLimitsTest {

  @Test
  void ranges_ofWhatADetectorHears_areNotThoseOfTheSource() {
    assertThat(
            codes(
                "bus drums { source drum-bus",
                "compressor threshold -16 dBFS ratio 2:1 attack 30 ms release 120 ms {",
                "side-chain { high-pass 110 Hz 12 dB/oct } }",
                "}"))
        .isEmpty();
  }

  @Test
  void ranges_ofTheFiltersThatDivideASoundBetweenPaths_areNotThoseOfTheSource() {
    String divided =
        "parallel {\npath \"low\" { low-pass 250 Hz 24 dB/oct linkwitz-riley }\n"
            + "path \"high\" { high-pass 250 Hz 24 dB/oct linkwitz-riley }\n}";
    assertThat(codes("chain c { source bass", divided, "}"))
        .doesNotContain("extreme-value", "uncommon-value");
    assertThat(codes("chain c { source bass", "low-pass 250 Hz 24 dB/oct linkwitz-riley", "}"))
        .contains("extreme-value");
  }

  @Test
  void limits_ofWhatADetectorHears_hold() {
    assertThat(
            codes(
                "bus drums { source drum-bus",
                "compressor threshold -16 dBFS ratio 2:1 attack 30 ms release 120 ms {",
                "side-chain { high-pass 110 Hz 96 dB/oct } }",
                "}"))
        .contains("outside-limits");
  }

  @ParameterizedTest
  @CsvSource({
    "bell 30 kHz +2 dB Q 1, sample-rate-conversion 96 kHz, true",
    "sample-rate-conversion 96 kHz, bell 30 kHz +2 dB Q 1, false",
    "bell 12 kHz +2 dB Q 1, sample-rate-conversion 22.05 kHz, false",
    "sample-rate-conversion 22.05 kHz, bell 12 kHz +2 dB Q 1, true"
  })
  void frequency_behindAConversion_isJudgedAtTheNewRate(String a, String b, boolean isFound) {
    assertThat(codes("chain c {", a, b, "}").contains("frequency-above-nyquist"))
        .isEqualTo(isFound);
  }

  @ParameterizedTest
  @CsvSource({
    "sample-rate-conversion 96 kHz, false",
    "parallel { path \"a\" { sample-rate-conversion 96 kHz } }, true",
    "mid-side { side { sample-rate-conversion 96 kHz } }, true",
    "during 0:01 to 0:02 { sample-rate-conversion 96 kHz }, true",
    "parallel { path \"a\" { sample-rate-conversion 96 kHz bypassed } }, false"
  })
  void conversion_ofAPartOfTheSignal_isAnError(String line, boolean isFound) {
    assertThat(codes("chain c {", line, "}").contains("rate-change-misplaced")).isEqualTo(isFound);
  }

  @Test
  void conversion_beforeAStageThatListensToAnotherChain_isAnError() {
    assertThat(
            codes(
                "bus c {",
                "sample-rate-conversion 96 kHz",
                "compressor threshold -20 dBFS ratio 2:1 key kick",
                "}",
                "chain kick { take \"k.wav\" }"))
        .contains("rate-change-misplaced");
  }

  @ParameterizedTest
  @CsvSource({
    "high-pass 60 Hz 36 dB/oct, over-steep-slope",
    "high-pass 60 Hz 48 dB/oct, over-steep-slope",
    "bell 300 Hz -10 dB Q 0.6, wide-deep-cut",
    "bell 18 kHz +4 dB Q 2, boost-beyond-hearing"
  })
  void line_withOneFault_hasOneFinding(String line, String code) {
    assertThat(codes("chain lead { source lead-vocal", line, "}")).containsExactly(code);
  }

  @ParameterizedTest
  @CsvSource({"-10 dB, false", "+12 dB, true"})
  void distortionOfACopy_besideTheUntouchedSound_countsByItsShare(String gain, boolean isFound) {
    assertThat(
            codes(
                    "bus drums { source drum-bus",
                    "parallel {",
                    "path \"as it is\"",
                    "path \"squashed\" " + gain + " {",
                    "compressor threshold -38 dBFS ratio 6:1 attack 3 ms release 70 ms",
                    "}",
                    "}",
                    "}")
                .contains("low-note-distortion"))
        .isEqualTo(isFound);
  }

  @ParameterizedTest
  @CsvSource({"gain -3 dB, false", "gain 0 dB, true", "limiter ceiling -3 dBFS, false"})
  void insert_behindWhatLowersPeaks_isJudgedByTheLowerPeak(String line, boolean isFound) {
    assertThat(
            codes(
                    "session { alignment 0 dBu = -18 dBFS }",
                    "chain lead { source lead-vocal",
                    line,
                    "insert \"box\" send +4 dBu return +4 dBu latency 1 ms clip-level 22 dBu {",
                    "gain +1 dB",
                    "}",
                    "}")
                .contains("device-overdriven"))
        .isEqualTo(isFound);
  }

  @Test
  void latencies_ofParallelPaths_areMadeEqualAndNotFound() {
    assertThat(
            codes(
                "session { alignment 0 dBu = -18 dBFS }",
                "chain bass { source bass",
                "parallel {",
                "path \"direct\"",
                "path \"amplifier\" -6 dB {",
                "insert \"cabinet\" send -6 dBu return 0 dBu latency 2.9 ms",
                "}",
                "}",
                "}"))
        .isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "true-peak-limiter ceiling -1 dBTP",
        "clipper ceiling -1 dBFS oversampling 8",
        "saturation symmetric oversampling 16",
      })
  void latencies_ofParallelStages_areMadeEqualAndNotFound(String line) {
    assertThat(
            codes(
                "session { alignment 0 dBu = -18 dBFS }",
                "chain bass { source bass",
                "parallel {",
                "path \"direct\"",
                "path \"amplifier\" -6 dB {",
                line,
                "}",
                "}",
                "}"))
        .doesNotContain("parallel-path-late");
  }

  private static List<String> codes(String... lines) {
    JudgedText judged = JudgedText.of(String.join("\n", lines) + "\n");
    assertThat(judged.textFaults()).isEmpty();
    return judged.findings().stream().map(Finding::code).toList();
  }
}
