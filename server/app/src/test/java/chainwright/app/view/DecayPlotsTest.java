package chainwright.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.app.plot.AltText;
import chainwright.app.plot.Curve;
import chainwright.app.plot.DecayPlot;
import chainwright.app.plot.Repeat;
import chainwright.app.plot.SvgPlot;
import chainwright.app.plot.TimeEvent;
import chainwright.engine.path.PathElement.StageElement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is heard after a sound, drawn. */
class DecayPlotsTest {

  private static StageElement stage(String text) {
    return (StageElement) DrawnPath.of(text).elements().get(0);
  }

  private static DecayPlot plot(String text) {
    return DecayPlots.of(stage(text)).orElseThrow();
  }

  /** From the end of the pre-delay on, with the ways through the room. */
  @ParameterizedTest
  @CsvSource({
    "reverb 1.4 s pre-delay 0 ms, 1.4",
    "reverb 1.4 s pre-delay 200 ms, 1.6",
    "reverb 5 s pre-delay 0 ms, 5",
  })
  void reverb_markOf60Decibels_standsAtTheDecayAfterThePreDelay(String text, double seconds) {
    assertThat(plot(text).marks().get(0).timeSeconds()).isCloseTo(seconds, within(0.06 * seconds));
  }

  @ParameterizedTest
  @CsvSource({
    "reverb 1.4 s, 500 Hz to 1 kHz|125 Hz|4 kHz",
    "reverb 1.4 s bass-ratio 1, 125 Hz to 1 kHz|4 kHz",
    "reverb 1.4 s bass-ratio 1 treble-ratio 1, 125 Hz to 4 kHz",
  })
  void reverb_octavesThatFallAlike_areOneLine(String text, String labels) {
    assertThat(plot(text).curves().stream().map(Curve::label))
        .containsExactly(labels.split("\\|", -1));
  }

  @Test
  void reverb_inWords_saysWhenEachOctaveHasFallen() {
    assertThat(AltText.of(plot("reverb 2 s bass-ratio 1.5 treble-ratio 0.5 pre-delay 100 ms")))
        .matches(
            "Reverb 2 s \\(level after a sound stops\\): pre-delay 100 ms; −60 dB after 2\\.1\\d? s;"
                + " 3\\.\\d+ s at 125 Hz; 1\\.\\d+ s at 4 kHz");
  }

  @Test
  void reverb_besideTheSound_isALevelBelowBoth() {
    assertThat(plot("reverb 1.8 s blend 15 %").caption())
        .isEqualTo("level below the sound with its room");
  }

  @Test
  void echo_inWords_saysTheFirstRepeatsAndHowManyMore() {
    assertThat(AltText.of(plot("echo 250 ms feedback 50 %")))
        .startsWith("Echo 250 ms (level of each repeat): 0 dB after 250 ms; −6 dB after 500 ms")
        .endsWith("and 2 more");
  }

  @Test
  void reverb_preDelay_isNamedWhereItEnds() {
    assertThat(plot("reverb 1.4 s pre-delay 120 ms").events())
        .containsExactly(new TimeEvent(0.12, "pre-delay 120 ms"));
    assertThat(plot("reverb 1.4 s pre-delay 0 ms").events()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "echo 350 ms feedback 0 %, 1, 0.35, level of each repeat",
    "echo 350 ms feedback 50 %, 10, 0.35, level of each repeat",
    "echo 350 ms feedback 50 % blend 30 %, 10, 0, the sound and each repeat",
  })
  void echo_anySettings_isAStemARepeatDownTo60Decibels(
      String text, int count, double firstSeconds, String caption) {
    DecayPlot plot = plot(text);
    assertThat(plot.repeats()).hasSize(count);
    assertThat(plot.repeats().get(0).timeSeconds()).isEqualTo(firstSeconds);
    assertThat(plot.caption()).isEqualTo(caption);
    assertThat(plot.curves()).isEmpty();
  }

  @Test
  void echo_withDamping_showsTheHighsFallSooner() {
    DecayPlot plot = plot("echo 350 ms feedback 50 % damping 2 kHz");
    Curve high = plot.curves().get(plot.curves().size() - 1);
    assertThat(high.label()).isEqualTo("4 kHz");
    for (int i = 0; i < plot.repeats().size(); i++) {
      Repeat repeat = plot.repeats().get(i);
      assertThat(high.x().get(i)).isEqualTo(repeat.timeSeconds());
      assertThat(high.y().get(i)).isLessThan(repeat.levelDb() - 3);
    }
  }

  /** The ends of all limits: a picture of them is never too large for a hover. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "reverb 0.05 s bass-ratio 0.5 treble-ratio 0.2 pre-delay 500 ms",
        "reverb 30 s bass-ratio 2 treble-ratio 1.2 pre-delay 0 ms",
        "reverb 30 s bass-ratio 0.5 treble-ratio 0.2 pre-delay 500 ms blend 0 %",
        "reverb 1 s blend 1 %",
        "echo 0.1 ms feedback 99 %",
        "echo 10000 ms feedback 99 % damping 500 Hz blend 1 %",
        "echo 10000 ms feedback 99 % damping 23000 Hz",
        "echo 100 ms blend 0 %",
      })
  void picture_atTheEndsOfTheLimits_isSmall(String text) {
    assertThat(SvgPlot.render(plot(text)).length()).isLessThan(29_000);
  }
}
