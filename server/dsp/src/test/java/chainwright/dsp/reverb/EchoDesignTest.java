package chainwright.dsp.reverb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.Wiring;
import chainwright.quantity.Frequency;
import chainwright.quantity.SampleRate;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The repeats of a sound. */
class EchoDesignTest {

  private static final SampleRate RATE = SampleRate.ofHertz(48_000);

  private static EchoDesign echo(int frames, double feedback, double dampingHz) {
    Optional<Frequency> damping =
        dampingHz == 0 ? Optional.empty() : Optional.of(Frequency.ofHertz(dampingHz));
    return new EchoDesign(frames, feedback, damping, RATE);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 100, 511, 512, 513, 9_600})
  void repeats_ofAnImpulse_comeInTimeAndSofter(int frames) {
    double[][] signal = new double[2][6 * frames];
    signal[0][0] = 1;
    signal[1][0] = -2;
    echo(frames, 0.5, 0).newProcessor(Wiring.ofChannels(2)).process(signal, 0, 6 * frames);
    double[] expected = new double[6 * frames];
    for (int repeat = 1; repeat < 6; repeat++) {
      expected[repeat * frames] = Math.pow(0.5, repeat - 1);
    }
    assertThat(signal[0]).isEqualTo(expected);
    assertThat(signal[1][5 * frames]).isEqualTo(-2 * expected[5 * frames]);
  }

  /** Source: the geometric series of z⁻ᴰ L, with |L|² = 1 / (1 + (f/fc)²) after warping. */
  @ParameterizedTest
  @CsvSource({"0.5, 3000", "0.9, 1000", "0.3, 12000"})
  void response_withDamping_isThatOfTheLoop(double feedback, double dampingHz) {
    int frames = 48;
    EchoDesign design = echo(frames, feedback, dampingHz);
    double[][] signal = new double[1][40_000];
    signal[0][0] = 1;
    design.newProcessor(Wiring.ofChannels(1)).process(signal, 0, 40_000);
    for (double hertz : new double[] {50, 500, 1000, 3000, 11_000}) {
      double u = Math.tan(Math.PI * hertz / 48_000) / Math.tan(Math.PI * dampingHz / 48_000);
      double angle = -2 * Math.PI * hertz * frames / 48_000 - Math.atan(u);
      double size = 1 / Math.hypot(1, u);
      double loopRe = size * Math.cos(angle);
      double loopIm = size * Math.sin(angle);
      double expected = size / Math.hypot(1 - feedback * loopRe, feedback * loopIm);
      double re = 0;
      double im = 0;
      for (int i = 0; i < 40_000; i++) {
        re += signal[0][i] * Math.cos(2 * Math.PI * hertz * i / 48_000);
        im += signal[0][i] * Math.sin(2 * Math.PI * hertz * i / 48_000);
      }
      assertThat(Math.hypot(re, im)).as("%s Hz", hertz).isCloseTo(expected, within(1e-9));
    }
  }

  @ParameterizedTest
  @CsvSource({"4800, 0, 0", "4800, 0.5, 0", "960, 0.99, 0", "4800, 0.75, 5000", "5, 0, 500"})
  void tail_atItsEnd_hasFallenBy90Decibels(int frames, double feedback, double dampingHz) {
    EchoDesign design = echo(frames, feedback, dampingHz);
    int tail = design.tailFrames();
    double[][] signal = new double[1][2 * tail + 2];
    signal[0][0] = 1;
    design.newProcessor(Wiring.ofChannels(1)).process(signal, 0, signal[0].length);
    double highest = Arrays.stream(signal[0]).map(Math::abs).max().orElseThrow();
    double left = Arrays.stream(signal[0], tail + 1, 2 * tail + 2).map(Math::abs).max().orElse(0);
    assertThat(left).isLessThanOrEqualTo(highest * Math.pow(10, -90 / 20.0));
  }

  /** The fall of each repeat, as many as make 60 dB. */
  @ParameterizedTest
  @CsvSource({"4800, 0.5, 0, 100, 0.9966", "4800, 0, 0, 100, 0.1", "4800, 0.5, 1000, 1000, 0.6645"})
  void decay_atAFrequency_isThatOfTheRepeats(
      int frames, double feedback, double dampingHz, double hertz, double seconds) {
    assertThat(echo(frames, feedback, dampingHz).secondsAt(hertz))
        .isCloseTo(seconds, within(0.001));
  }

  @ParameterizedTest
  @ValueSource(doubles = {8_000, 48_000, 384_000})
  void loop_atTheEndsOfAllLimits_neverGrows(double rateHz) {
    for (double dampingHz : new double[] {500, 0.499 * rateHz}) {
      for (double seconds : new double[] {0.0001, 0.02}) {
        EchoDesign design =
            new EchoDesign(
                (int) Math.max(1, Math.round(seconds * rateHz)),
                0.99,
                Optional.of(Frequency.ofHertz(dampingHz)),
                SampleRate.ofHertz(rateHz));
        double[][] signal = new double[1][200_000];
        Arrays.fill(signal[0], 0, 100, 1);
        design.newProcessor(Wiring.ofChannels(1)).process(signal, 0, 200_000);
        double early = RoomMeasures.energy(signal[0], 0, 100_000);
        assertThat(RoomMeasures.energy(signal[0], 100_000, 200_000)).isLessThanOrEqualTo(early);
      }
    }
  }

  @Test
  void feedback_of1_throws() {
    assertThatThrownBy(() -> echo(10, 1, 0)).isInstanceOf(IllegalArgumentException.class);
  }
}
