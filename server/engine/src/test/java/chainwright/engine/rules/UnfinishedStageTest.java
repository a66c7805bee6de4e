package chainwright.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Project;
import chainwright.notation.project.Scope;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A stage on whose line something cannot be read: no default stands in for what was meant. */
class UnfinishedStageTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "high-pass 66 Hz 18 dB",
        "high-pass 66 Hz 18 dB oct",
        "high-pass 66",
        "high-pass 66 dB",
        "high-pass 66Hz18dB/oct",
        "compressor threshold -20 dBFS ratio 2",
        "compressor threshold -20 dBFS ratio 4:2",
        "compressor threshold -20 dBFS ratio",
        "compressor threshold -20 dBFS 12 ms",
        "compressor threshold -20 dBFS attack 10 - 20 ms",
        "compressor threshold -20 dBFS 9 dB",
        "compressor threshold -20 dB ratio 2:1",
        "compressor threshold -20 dBFS rattio 2:1",
        "bell 300 Hz - 2 dB",
        "bell 300 Hz -2 dB Q1.8",
        "bell 300 Hz -2 dB Q 1,8",
        "bell 3.00.0 Hz -2 dB",
        "bell 300 Hz -3 to -2 dB",
        "bell 300 Hz -2 dB curve bilinaer",
        "de-ess band 5-9 kHz threshold -30 dBFS",
      })
  void stage_withAnUnreadableSetting_isNeitherComputedNorJudgedNorHeard(String line) {
    StageElement stage = stage(line);
    assertThat(stage.sound()).isEmpty();
    assertThat(stage.isFinished()).isFalse();
    SignalPath path = path(line);
    assertThat(path.stages()).isEmpty();
    assertThat(path.uncomputed()).hasSize(1);
    assertThat(path.response().decibelsAt(30)).isZero();
    assertThat(SoundBuilder.build(path, true).silentStages()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "parallel { path \"a\" { bell 1 kHz +6 dB }~ path \"b\" -12 { bell 1 kHz +6 dB } }",
        "insert \"box\" send 4 return 0 dBu { bell 1 kHz +6 dB }",
        "multiband slope 24 dB { band below 1 kHz { gain +6 dB }~ band above 1 kHz }",
      })
  void structure_withAnUnreadableSetting_isNotComputedAndKeepsItsStages(String lines) {
    String line = lines.replace('~', '\n');
    SignalPath path = path(line);
    assertThat(path.uncomputed()).hasSize(1);
    assertThat(path.response().decibelsAt(1000)).isZero();
    assertThat(path.stages()).isNotEmpty().allMatch(one -> one.sound().isPresent());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "high-pass 66 Hz 18 dB                 | slope",
        "compressor threshold -20 dBFS ratio 2 | ratio",
        "compressor threshold -20 dBFS 12 ms   | attack",
        "bell 300 Hz -2 dB Q 1,8               | Q",
      })
  void setting_thatMayBeWhatCouldNotBeRead_hasNoValueByOmission(String line, String setting) {
    assertThat(stage(line).stage().settings().value(setting)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "high-pass 66 Hz 18 dB/oct;",
        "high-pass 66 Hz 18 dB/oct // as tried",
        "high-pass 66 Hz 18 dB/oct \"stray\"",
        "high-pass 66 Hz 18 dB/oct 12 dB/oct",
        "high-pass 66 Hz 18 dB/oct deliberate over-steep-slope",
        "high-pass cutoff = 66 Hz 18 dB/oct",
      })
  void stage_whoseSettingsAreAllRead_isComputedWhateverElseIsWrong(String line) {
    assertThat(JudgedText.of(text(line)).textFaults()).isNotEmpty();
    assertThat(stage(line).sound()).isPresent();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "high-pass 66 Hz 18 dB                 | GIVES_A_MEANING",
        "compressor threshold -20 dBFS ratio 2 | GIVES_A_MEANING",
        "compressor threshold -20 dBFS 4:2     | GIVES_A_MEANING",
        "bell 300 Hz - 2 dB                    | GIVES_A_MEANING",
        "bell 300 Hz -2 dB Q1.8                | GIVES_A_MEANING",
        "bell 300 Hz -2 dB;                    | KEEPS_THE_SOUND",
        "bell 300 Hz -2 dB -3 dB               | KEEPS_THE_SOUND",
      })
  void fix_ofAFaultOfTheText_saysWhetherTheStageCountedBefore(String line, Fix.Effect effect) {
    JudgedText judged = JudgedText.of(text(line));
    assertThat(judged.textFaults().get(0).fixes())
        .isNotEmpty()
        .allSatisfy(fix -> assertThat(fix.effect()).isEqualTo(effect));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "high-pass 66 dB                 | wrong-unit       | high-pass 66 Hz",
        "high-pass 66 Hz 18 dB oct       | unknown-unit     | high-pass 66 Hz 18 dB/oct",
        "high-pass 66 Hz slope 18 dB oct | unknown-unit     | high-pass 66 Hz slope 18 dB/oct",
        "bell 3 kHz +3 to +4 dB          | range-unexpected | bell 3 kHz +3 dB",
        "bell 3 kHz +3..+4 dB            | stray-character  | bell 3 kHz +3 to +4 dB",
        "bell 200 to 400 Hz -3 dB        | range-unexpected | bell 200 Hz -3 dB",
      })
  void slipOfAUnitOrARange_isOneFaultWithAFix(String line, String code, String mended) {
    JudgedText judged = JudgedText.of(text(line));
    assertThat(judged.textFaults()).extracting(Finding::code).containsExactly(code);
    assertThat(judged.with(judged.textFaults().get(0).fixes().get(0)).text())
        .isEqualTo(text(mended));
  }

  /** The middle of frequencies is as many octaves from both ends: the root of their product. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bell 3 kHz +3 to +4 dB    | `+3 dB` `+3.5 dB` `+4 dB`",
        "bell 3 kHz -4 to -2 dB    | `-4 dB` `-3 dB` `-2 dB`",
        "bell 200 to 400 Hz -3 dB  | `200 Hz` `280 Hz` `400 Hz`",
        "bell 800 Hz to 1 kHz 3 dB | `800 Hz` `1 kHz`",
      })
  void range_whereOneValueIsWanted_offersItsEndsAndItsMiddle(String line, String offered) {
    assertThat(JudgedText.of(text(line)).textFaults().get(0).fixes())
        .extracting(fix -> fix.title().replace("Write ", ""))
        .containsExactly(offered.split("(?<=`) "));
  }

  private static String text(String line) {
    return "chain c {\n  " + line + "\n}\n";
  }

  private static SignalPath path(String line) {
    Scope scope = new Project(List.of(JudgedText.of(text(line)).file())).scope("example.chain");
    Definition.Track track = scope.track("c").orElseThrow();
    return new PathBuilder(scope).build(track);
  }

  private static StageElement stage(String line) {
    List<PathElement> elements = path(line).elements();
    assertThat(elements).hasSize(1);
    return (StageElement) elements.get(0);
  }
}
