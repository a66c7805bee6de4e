package chainwright.engine.judge;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JudgeTest {

  private static final Catalogue CATALOGUE = Catalogue.load();
  private static final SectionReader READER = new SectionReader(CATALOGUE);
  private static final Judge JUDGE = new Judge(CATALOGUE);

  private static final String TWO_CHAINS =
      """
      chain lead {
        high-pass  80 Hz  36 dB/oct
      }
      chain kick {
        high-pass  30 Hz  36 dB/oct
      }
      """;

  @ParameterizedTest
  @CsvSource({
    "36 dB/oct, true",
    "18 dB/oct, false",
    "36 dB/oct deliberate over-steep-slope \"checked by ear\", false",
    "36 dB/oct bypassed, false",
  })
  void steepFilter_inAChain_isFoundUnlessDeliberateOrBypassed(String line, boolean isFound) {
    String text = "chain lead {\n  high-pass 80 Hz " + line + "\n}\n";
    assertThat(codes(text).contains("over-steep-slope")).isEqualTo(isFound);
  }

  @Test
  void deliberateClause_thatSilencesNothing_isFound() {
    assertThat(
            codes(
                "chain lead {\n  high-pass 80 Hz 12 dB/oct deliberate over-steep-slope \"x\"\n}\n"))
        .contains("deliberate-silences-nothing");
  }

  @Test
  void deliberateClause_withAMisspeltRule_isFound() {
    assertThat(
            codes(
                "chain lead {\n  high-pass 80 Hz 36 dB/oct deliberate over-step-slope \"x\"\n}\n"))
        .contains("unknown-rule", "over-steep-slope");
  }

  @Test
  void deliberateClause_inAPreset_holdsWhereItIsApplied() {
    String preset =
        "preset guard {\n  high-pass 80 Hz 36 dB/oct deliberate over-steep-slope \"x\"\n}\n";
    assertThat(codes(preset + "chain lead {\n  apply guard\n}\n"))
        .doesNotContain("over-steep-slope");
  }

  @Test
  void judgement_ofTheSameFiles_isNotMadeAgain() {
    SourceFile file = SourceFile.of("a.chain", TWO_CHAINS, READER);
    Judgement first = JUDGE.judge(new Project(List.of(file)), "a.chain", Judgement.NONE);
    assertThat(JUDGE.judge(new Project(List.of(file)), "a.chain", first)).isSameAs(first);
    SourceFile beside = SourceFile.of("b.chain", TWO_CHAINS, READER);
    assertThat(JUDGE.judge(new Project(List.of(file, beside)), "a.chain", first))
        .isNotSameAs(first);
  }

  @Test
  void judgement_afterAnEditElsewhere_keepsTheFindingsOfTheOtherChain() {
    SourceFile before = SourceFile.of("a.chain", TWO_CHAINS, READER);
    Judgement first = JUDGE.judge(new Project(List.of(before)), "a.chain", Judgement.NONE);
    SourceFile after =
        before.withTree(before.tree().withText(TWO_CHAINS.replace("30 Hz", "31 Hz")));
    Judgement second = JUDGE.judge(new Project(List.of(after)), "a.chain", first);
    Finding kept = steep(first).get(0);
    assertThat(steep(second).get(0)).isSameAs(kept);
    assertThat(steep(second).get(1)).isNotSameAs(steep(first).get(1));
    assertThat(second.findings())
        .usingRecursiveFieldByFieldElementComparatorIgnoringFields("place", "fixes", "related")
        .isEqualTo(JUDGE.judge(new Project(List.of(after)), "a.chain", Judgement.NONE).findings());
  }

  @Test
  void judgement_afterItsPresetWasEdited_isMadeAnew() {
    String preset = "preset guard {\n  high-pass 80 Hz 36 dB/oct\n}\n";
    String chain = "chain lead {\n  apply guard\n}\n";
    SourceFile before = SourceFile.of("a.chain", preset + chain, READER);
    Judgement first = JUDGE.judge(new Project(List.of(before)), "a.chain", Judgement.NONE);
    SourceFile after = before.withTree(before.tree().withText(preset.replace("36", "12") + chain));
    Judgement second = JUDGE.judge(new Project(List.of(after)), "a.chain", first);
    assertThat(steep(first)).hasSize(1);
    assertThat(steep(second)).isEmpty();
  }

  private static List<Finding> steep(Judgement judgement) {
    return judgement.findings().stream()
        .filter(finding -> finding.code().equals("over-steep-slope"))
        .toList();
  }

  private static List<String> codes(String text) {
    SourceFile file = SourceFile.of("a.chain", text, READER);
    return JUDGE.judge(new Project(List.of(file)), "a.chain", Judgement.NONE).findings().stream()
        .map(Finding::code)
        .toList();
  }
}
