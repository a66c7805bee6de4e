package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.WrittenChain;
import chainwright.engine.path.SignalPath;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How late a stage is: what is said of it and what is rendered. */
class LatencyTest {

  private static final String SESSION = "session \"s\" {\nalignment 0 dBu = -18 dBFS\n}\n";

  private static double statedFrames(SignalPath path) {
    return SoundBuilder.latencySeconds(path) * path.rate().hertz();
  }

  /** Source: the settings themselves, which are look-ahead and converters. */
  @ParameterizedTest
  @CsvSource({
    "limiter ceiling -1 dBFS, 3",
    "limiter ceiling -1 dBFS look-ahead 0 ms, 0",
    "gate threshold -40 dBFS, 1",
    "align -7 ms, 7",
    "align 7 ms, 0",
    "delay 7 ms, 0",
    "compressor threshold -20 dBFS, 0",
    "clipper ceiling -1 dBFS oversampling 1, 0",
    "reverb, 0",
    "echo 300 ms, 0",
    "insert \"box\" latency 2 ms { gain 1 dB }, 2",
  })
  void stage_ofLookAheadAlone_isAsLateAsWritten(String line, double milliseconds) {
    assertThat(1000 * SoundBuilder.latencySeconds(WrittenChain.pathOf(line)))
        .isCloseTo(milliseconds, within(1e-9));
  }

  /** The tip of an impulse too soft to be changed, against what is stated. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "clipper ceiling -1 dBFS",
        "clipper ceiling -1 dBFS oversampling 2",
        "clipper ceiling -1 dBFS oversampling 32",
        "saturation symmetric",
        "saturation valve oversampling 8",
        "saturation tape head-bump 0 dB oversampling 16 blend 50 %",
        "saturation transformer",
        "limiter ceiling -1 dBFS look-ahead 2.2 ms",
        "true-peak-limiter ceiling -1 dBTP look-ahead 5 ms",
        "true-peak-limiter ceiling -1 dBTP look-ahead 0 ms oversampling 32",
        "insert \"box\" latency 1.6 ms { gain 1 dB }",
        "parallel {\npath \"dry\"\npath \"hot\" { clipper ceiling -1 dBFS }\n}",
        "clipper ceiling -1 dBFS\nlimiter ceiling -1 dBFS\nsaturation valve",
      })
  void impulse_throughStages_comesAsLateAsStated(String lines) {
    SignalPath path = WrittenChain.path(SESSION + "chain c {\n" + lines + "\n}\n");
    ProcessorDesign design = Rendered.design(path);
    double[][] signal = new double[1][20_000];
    signal[0][100] = 1e-3;
    design.newProcessor(Wiring.ofChannels(1)).process(signal, 0, 20_000);
    int tip = 0;
    for (int i = 0; i < 20_000; i++) {
      tip = Math.abs(signal[0][i]) > Math.abs(signal[0][tip]) ? i : tip;
    }
    assertThat(tip - 100).as(lines).isEqualTo((int) Math.round(statedFrames(path)));
  }

  /**
   * Whatever makes a path late, oversampling, look-ahead or converters, the others wait for it:
   * four equal ones add up to 20 lg 4 = 12.04 dB. A path that missed by one frame would stand at
   * 75° here.
   */
  @Test
  void parallelPaths_ofAnyLatency_meet() {
    ProcessorDesign design =
        Rendered.design(
            WrittenChain.pathOf(
                """
                parallel {
                  path "dry"
                  path "hot" { clipper ceiling -1 dBFS }
                  path "safe" { true-peak-limiter ceiling -1 dBTP }
                  path "out" { insert "box" latency 1.6 ms { gain 0 dB } }
                }
                """));
    double[][] signal = new double[1][20_000];
    Arrays.setAll(signal[0], i -> 1e-3 * Math.cos(2 * Math.PI * (i * 10L % 48) / 48));
    design.newProcessor(Wiring.ofChannels(1)).process(signal, 0, 20_000);
    double power = 0;
    for (int i = 20_000 - 4800; i < 20_000; i++) {
      power += signal[0][i] * signal[0][i] / 4800;
    }
    assertThat(10 * Math.log10(2e6 * power)).isCloseTo(12.04, within(0.05));
  }
}
