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
  void stage_withAnUnreadableSetting_isNeitherComputedNorHeard(String line) {
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

  private static final String VOICE = "source lead-vocal~";
  private static final String CUT = "bell 300 Hz -3 dB Q 1.4~";
  private static final String COMPRESSOR = "compressor threshold -20 dBFS ratio 2:1~";

  /** What stays however the unread value is mended is judged, and nothing else. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "compressor threshold -20~de-ess band 5 to 9 kHz threshold -32 | compress-before-de-ess | 1",
        "compressor threshold -20 dBFS~gate threshold -40 dBFS key 3   | gate-after-compressor  | 0",
        "compressor threshold -20 dBFS~gate threshold -40              | gate-after-compressor  | 1",
        "compressor threshold -20~high-pass 66                         | rumble-works-the-detector | 1",
        "reverb 1.8~compressor threshold -20                           | reverb-feeds-dynamics  | 1",
        "bell 3 kHz -2 Q 90                                            | outside-limits         | 1",
        "bell 3 kHz -2 Q 9                                             | uncommon-value         | 0",
        "compressor threshold -20 ratio 60:1                           | extreme-value          | 1",
        "delay 300 ms feedback 30 %                                    | extreme-value          | 0",
        "de-ess band 5 to threshold -32 dBFS~high-shelf 6 kHz +6 dB    | bright-boost-after-de-ess | 0",
        "de-ess band 5 to 9 kHz threshold -32~high-shelf 6 kHz +6 dB   | bright-boost-after-de-ess | 1",
      })
  void stage_withAnUnreadableSetting_isJudgedByWhatIsSettled(String lines, String code, int count) {
    assertThat(JudgedText.of(text((VOICE + lines).replace('~', '\n'))).findings(code))
        .hasSize(count);
  }

  /** Bells share a band only where nothing between them depends on the level. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bell 310 Hz -2 dB Q 1.4                       | same-band-repeated   | 1",
        "gain -2 dB~bell 310 Hz -2 dB Q 1.4            | same-band-repeated   | 1",
        "COMPRESSORbell 310 Hz -2 dB Q 1.4             | same-band-repeated   | 0",
        "saturation tape drive 3 dB~bell 310 Hz -2 dB  | same-band-repeated   | 0",
        "bell 310 Hz -2 dB Q 1.4~bell 300 Hz +5 dB Q 1.4 | cut-and-boost-cancel | 2",
        "bell 310 Hz -2 dB~COMPRESSORbell 300 Hz +5 dB | cut-and-boost-cancel | 0",
      })
  void bells_betweenStages_areComparedInOneRunOfLinearStages(String lines, String code, int count) {
    String chain = VOICE + CUT + lines.replace("COMPRESSOR", COMPRESSOR);
    assertThat(JudgedText.of(text(chain.replace('~', '\n'))).findings(code)).hasSize(count);
  }

  /** How much of the sum a path is, is not known as long as a gain beside it is unread. */
  @ParameterizedTest
  @CsvSource({"-12 dB, 1", "-12, 0"})
  void distortion_inAPathWhoseShareIsUnknown_isNotJudged(String gain, int count) {
    String chain =
        "source bass~parallel {~path \"a\" "
            + gain
            + "~path \"b\" { compressor threshold -30 dBFS ratio 10:1 attack 0.1 ms release 5 ms }~}";
    assertThat(JudgedText.of(text(chain.replace('~', '\n'))).findings("low-note-distortion"))
        .hasSize(count);
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
