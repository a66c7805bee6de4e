package chainwright.notation.lowering;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.UsedWith;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Settings that do nothing beside what else is written. */
class IdleSettingTest {

  private static final SectionReader READER = new SectionReader(Catalogue.load());

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "high-pass 66 Hz 18 dB/oct normalised phase | normalised phase",
        "low-pass 9 kHz normalised magnitude family linkwitz-riley | normalised magnitude",
        "high-pass 66 Hz 18 dB/oct Q 1.2 | Q 1.2",
        "all-pass 300 Hz order first-order Q 0.7 | Q 0.7",
        "compressor threshold -20 dBFS ratio 2:1 rms-window 20 ms | rms-window 20 ms",
        "saturation drive 6 dB character tape asymmetry 20 % | asymmetry 20 %",
        "de-ess band 5.5 to 9 kHz threshold -30 dBFS mode broadband slope 24 dB/oct | slope 24 dB/oct",
        "de-ess band 5.5 to 9 kHz threshold -30 dBFS mode broadband 24 dB/oct | 24 dB/oct",
      })
  void setting_thatNothingSwitchesOn_isIdleWhereItStands(String stage, String words) {
    assertThat(idle(stage)).containsExactly(words);
  }

  @ParameterizedTest
  @CsvSource({
    "high-pass 66 Hz 18 dB/oct family bessel normalised phase",
    "high-pass 66 Hz normalised phase family bessel 18 dB/oct",
    "high-pass 66 Hz 12 dB/oct Q 1.2",
    "all-pass 300 Hz order second-order Q 0.7",
    "compressor threshold -20 dBFS ratio 2:1 detector rms rms-window 20 ms",
    "saturation drive 6 dB character valve asymmetry 20 %",
    "de-ess band 5.5 to 9 kHz threshold -30 dBFS mode split-band 24 dB/oct",
  })
  void setting_thatAnotherSwitchesOn_isNotIdle(String stage) {
    assertThat(idle(stage)).isEmpty();
  }

  /** The catalogue says which word switches a setting on; all others leave it idle. */
  @TestFactory
  Stream<DynamicTest> setting_besideEachWordThatDecides_isIdleUnlessTheCatalogueNamesIt() {
    List<DynamicTest> tests = new ArrayList<>();
    for (StageKind kind : Catalogue.load().stages()) {
      for (Setting setting : kind.settings()) {
        if (setting.usedWith().isPresent()) {
          UsedWith used = setting.usedWith().get();
          Setting decides = kind.setting(used.setting()).orElseThrow();
          if (decides.takes() instanceof Takes.OneOf oneOf) {
            for (String word : oneOf.words()) {
              String written = setting.name() + " " + sample(setting);
              String stage = kind.word() + " " + used.setting() + " " + word + " " + written;
              List<String> expected = used.values().contains(word) ? List.of() : List.of(written);
              tests.add(
                  DynamicTest.dynamicTest(
                      stage, () -> assertThat(idle(stage)).isEqualTo(expected)));
            }
          }
        }
      }
    }
    assertThat(tests).hasSizeGreaterThan(30);
    return tests.stream();
  }

  @Test
  void finding_ofAnIdleSetting_namesWhatItNeedsAndWhatThereIs() {
    Finding finding = findings("high-pass 66 Hz 18 dB/oct normalised phase").get(0);
    assertThat(finding.what())
        .isEqualTo(
            "`normalised` does nothing here: it is used with `family` bessel, and this is"
                + " butterworth");
    assertThat(finding.remedy()).isEqualTo("Remove it, or write `family` bessel.");
  }

  @Test
  void fix_ofAnIdleSetting_removesItWithTheBlankBeforeIt() {
    Finding finding = findings("high-pass 66 Hz normalised phase 18 dB/oct").get(0);
    assertThat(finding.fixes()).hasSize(1);
    PlacedEdit edit = finding.fixes().get(0).edits().get(0);
    TextSpan span = edit.edit().span();
    String text = edit.section().text();
    assertThat(text.substring(0, span.start()) + edit.edit().newText() + text.substring(span.end()))
        .isEqualTo("chain lead {\n  high-pass 66 Hz 18 dB/oct\n}\n");
  }

  private static String sample(Setting setting) {
    if (setting.takes() instanceof Takes.InUnit takes) {
      return "12 " + takes.unit().symbol();
    }
    return setting.takes() instanceof Takes.OneOf oneOf ? oneOf.words().get(0) : "2";
  }

  private static List<String> idle(String stage) {
    return findings(stage).stream()
        .map(
            one -> {
              TextSpan span = one.place().span();
              return one.place().section().text().substring(span.start(), span.end());
            })
        .toList();
  }

  private static List<Finding> findings(String stage) {
    String text = "chain lead {\n  " + stage + "\n}\n";
    List<Finding> found = new ArrayList<>();
    for (Lowered section : SourceFile.of("a.chain", SyntaxTree.parse(text), READER).sections()) {
      section.findings().stream()
          .filter(one -> one.code().equals(Fault.IDLE_SETTING.code()))
          .forEach(found::add);
    }
    return found;
  }
}
