package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.Wiring;
import chainwright.engine.WrittenChain;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a change of the sample rate in a path does to what stands behind it. */
class RateChangeTest {

  private static List<Double> rates(String text) {
    return WrittenChain.path(text).stages().stream().map(stage -> stage.rate().hertz()).toList();
  }

  private static List<Double> ratesOf(String lines) {
    return rates("chain c {\n" + lines + "\n}\n");
  }

  @Test
  void stages_behindAConversion_areDesignedAtTheNewRate() {
    String lines =
        """
        bell 1 kHz 2 dB Q 1
        sample-rate-conversion 96 kHz
        bell 30 kHz 2 dB Q 1
        mid-side {
          side {
            high-pass 30 Hz 6 dB/oct
          }
        }
        sample-rate-conversion 44.1 kHz
        limiter ceiling -1 dBFS
        """;
    assertThat(ratesOf(lines))
        .containsExactly(48_000.0, 48_000.0, 96_000.0, 96_000.0, 96_000.0, 44_100.0);
    SignalPath path = WrittenChain.pathOf(lines);
    assertThat(path.deliveredRate().hertz()).isEqualTo(44_100);
    assertThat(path.elements().get(3).rate().hertz()).isEqualTo(96_000);
    assertThat(path.response().toDecibels(new double[] {1000})[0]).isCloseTo(2, within(0.01));
    assertThat(path.response().toDecibels(new double[] {23_000})[0]).isLessThan(-140);
  }

  @Test
  void conversion_inAPreset_changesTheRateOfTheChain() {
    assertThat(
            rates(
                """
                preset p "P" {
                  sample-rate-conversion 96 kHz
                }
                chain c {
                  apply p
                  gain 1 dB
                }
                """))
        .containsExactly(48_000.0, 96_000.0);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "sample-rate-conversion 96 kHz bypassed\ngain 1 dB",
        "parallel {\npath \"a\" {\nsample-rate-conversion 96 kHz\ngain 1 dB\n}\n}\ngain 2 dB",
        "insert \"box\" {\nsample-rate-conversion 96 kHz\ngain 1 dB\n}\ngain 2 dB",
        "compressor threshold -20 dBFS {\nside-chain {\nsample-rate-conversion 96 kHz\n}\n}\ngain 2 dB"
      })
  void conversion_bypassedOrEnclosed_changesNoRate(String lines) {
    assertThat(ratesOf(lines)).containsOnly(48_000.0);
  }

  /** Source: the look-ahead of the filter and of the limiter, each at its own rate. */
  @Test
  void latency_ofAConversion_isItsLookAhead() {
    SignalPath path =
        WrittenChain.pathOf(
            "sample-rate-conversion 96 kHz\nlimiter ceiling -1 dBFS look-ahead 3 ms");
    int reach = ((StageElement) path.elements().get(0)).rateChange().orElseThrow().reachFrames();
    assertThat(SoundBuilder.latencySeconds(path)).isCloseTo(reach / 48e3 + 0.003, within(1e-12));
  }

  private static double[] deliver(String lines, double[] in, int outFrames, int... blocks) {
    PathSound sound = SoundBuilder.build(WrittenChain.pathOf(lines), false);
    assertThat(sound.silentStages()).isEmpty();
    int late = sound.processor().latencyFrames();
    int needed = (int) sound.neededFrames(outFrames);
    double[][] body = {Arrays.copyOf(in, late + needed)};
    sound.processor().newProcessor(Wiring.ofChannels(1)).process(body, 0, late + needed);
    RateLegsRun run = new RateLegsRun(sound.legs(0), 1, Arrays.stream(blocks).max().orElseThrow());
    double[][] room = new double[1][run.mostOutputFrames()];
    List<Double> out = new ArrayList<>();
    int from = late;
    for (int i = 0; from < late + needed; i++) {
      int count = Math.min(blocks[i % blocks.length], late + needed - from);
      int given = run.process(body, from, count, room);
      for (int n = 0; n < given; n++) {
        out.add(room[0][n]);
      }
      from += count;
    }
    assertThat(out).hasSizeGreaterThanOrEqualTo(outFrames);
    return out.stream().limit(outFrames).mapToDouble(Double::doubleValue).toArray();
  }

  private static final String CHAIN =
      """
      limiter ceiling 0 dBFS look-ahead 2 ms
      sample-rate-conversion 44.1 kHz
      limiter ceiling 0 dBFS look-ahead 3 ms
      sample-rate-conversion 96 kHz
      limiter ceiling 0 dBFS look-ahead 1 ms
      """;

  @Test
  void blocks_ofAnySize_changeNoBit() {
    double[] in = Rendered.noise(1, 9_000, 3)[0];
    double[] whole = deliver(CHAIN, in, 18_000, 20_000);
    assertThat(deliver(CHAIN, in, 18_000, 1, 7, 511, 64)).containsExactly(whole);
  }

  /** Limiters that have nothing to do are only late, and that is made up for to the frame. */
  @Test
  void tone_throughLookAheadAtThreeRates_staysInItsPlace() {
    double[] in = new double[24_000];
    Arrays.setAll(in, n -> 0.1 * Math.sin(2 * Math.PI * 997 * n / 48e3));
    double[] out = deliver(CHAIN, in, 48_000, 4096);
    for (int n = 2_000; n < 46_000; n++) {
      assertThat(out[n]).isCloseTo(0.1 * Math.sin(2 * Math.PI * 997 * n / 96e3), within(1e-8));
    }
  }

  @ParameterizedTest
  @CsvSource({"48000, 88200", "1, 2", "0, 0", "47999, 88199"})
  void length_isThatOfTheTimeRoundedUp(long frames, long delivered) {
    PathSound sound =
        SoundBuilder.build(WrittenChain.pathOf("sample-rate-conversion 88.2 kHz"), false);
    assertThat(sound.deliveredFrames(frames)).isEqualTo(delivered);
  }

  /** A reverb behind the change of rate goes on as long as before it. */
  @Test
  void tail_behindAConversion_isAsLongAsBeforeIt() {
    double before = tail("reverb 1 s\nsample-rate-conversion 96 kHz");
    double behind = tail("sample-rate-conversion 96 kHz\nreverb 1 s");
    assertThat(behind).isCloseTo(before, within(0.02 * before));
  }

  private static double tail(String lines) {
    return SoundBuilder.build(WrittenChain.pathOf(lines), false).tailFrames();
  }
}
