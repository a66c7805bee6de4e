package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.dsp.loudness.TruePeakMeter;
import chainwright.dsp.loudness.TruePeakReading;
import chainwright.dsp.signal.KaiserWindow;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.WrittenChain;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The true peaks that a true-peak limiter leaves, read by the meter with 32 places a sample, which
 * shares no code with the limiter. Every signal ends at 0.45 of the rate and is followed by
 * silence.
 */
class TruePeakCeilingTest {

  private static final int FRAMES = 14_000;
  private static final int SILENT_FRAMES = 2_500;
  private static final double CEILING_DBTP = -1;
  private static final double BOUND_DB = 0.05;
  private static final double[] BAND = band();

  /** A low-pass filter of 0.44 of the rate, at −90 dB from 0.45 on. */
  private static double[] band() {
    double[] taps = new double[401];
    KaiserWindow window = KaiserWindow.ofAttenuation(90);
    for (int t = 0; t < taps.length; t++) {
      int x = t - 200;
      double sinc = x == 0 ? 2 * 0.44 : Math.sin(2 * Math.PI * 0.44 * x) / (Math.PI * x);
      taps[t] = sinc * window.at(x / 201.0);
    }
    return taps;
  }

  private static double tone(double share, int frame, double phase) {
    return Math.sin(2 * Math.PI * share * frame + phase);
  }

  private static double square(int frame) {
    double sum = 0;
    for (int h = 1; h * 0.0123 < 0.45; h += 2) {
      sum += 3 * tone(0.0123 * h, frame, 0.7 * h) / h;
    }
    return sum;
  }

  private static double bursts(int frame) {
    return frame / 700 % 3 == 0 ? 4 * tone(0.44, frame, 0.5) : 0.3 * tone(0.11, frame, 0);
  }

  private static double shortBursts(int frame) {
    return frame / 60 % 5 == 0 ? 8 * tone(0.25, frame, Math.PI / 4) : 0.3 * tone(0.11, frame, 0);
  }

  private static Map<String, IntToDoubleFunction> signals() {
    Map<String, IntToDoubleFunction> signals = new LinkedHashMap<>();
    signals.put("noise", random(0, 1));
    signals.put("uneven noise", random(3, 2));
    signals.put("clicks", random(40, 3));
    signals.put("0.44 of the rate", i -> 2 * tone(0.44, i, 0.3));
    signals.put("almost that", i -> 3 * tone(0.4397, i, 1.1));
    signals.put("a quarter, between samples", i -> 2 * tone(0.25, i, Math.PI / 4));
    signals.put("a third, between samples", i -> 4 * tone(1 / 3.0, i, 0.3));
    signals.put("two tones", i -> 2 * tone(0.44, i, 0.2) + 2 * tone(0.421, i, 0));
    signals.put("square", TruePeakCeilingTest::square);
    signals.put("pulses", i -> i % 997 == 0 ? 5 : 0);
    signals.put("bursts of a high tone", TruePeakCeilingTest::bursts);
    signals.put("short bursts", TruePeakCeilingTest::shortBursts);
    return signals;
  }

  static Stream<Arguments> cases() {
    List<String> settings =
        List.of(
            "look-ahead 3 ms",
            "look-ahead 0 ms release 1 ms",
            "look-ahead 20 ms oversampling 32",
            "look-ahead 0 ms release 1 ms oversampling 8");
    return settings.stream()
        .flatMap(one -> signals().keySet().stream().map(name -> Arguments.of(one, name)));
  }

  /** Noise of which one in so many samples sounds, all of them if 0. */
  private static IntToDoubleFunction random(int oneIn, long seed) {
    Random random = new Random(seed);
    return i -> oneIn == 0 || random.nextInt(oneIn) == 0 ? 2 * random.nextGaussian() : 0;
  }

  @ParameterizedTest(name = "{0}: {1}")
  @MethodSource("cases")
  void limiter_contentUpTo45PercentOfTheRate_keepsItsCeiling(String settings, String name) {
    IntToDoubleFunction signal = Objects.requireNonNull(signals().get(name));
    double[] raw = new double[FRAMES];
    for (int i = 0; i < FRAMES - SILENT_FRAMES; i++) {
      raw[i] = signal.applyAsDouble(i);
    }
    double[][] channels = {filtered(raw), new double[FRAMES]};
    double before = largestDbtp(channels);
    ProcessorDesign design =
        Rendered.design(
            WrittenChain.pathOf("true-peak-limiter ceiling " + CEILING_DBTP + " dBTP " + settings));
    design.newProcessor(Wiring.ofChannels(2)).process(channels, 0, FRAMES);
    assertThat(before).isGreaterThan(CEILING_DBTP + 1);
    assertThat(largestDbtp(channels)).isBetween(CEILING_DBTP - 0.05, CEILING_DBTP + BOUND_DB);
  }

  private static double[] filtered(double[] x) {
    double[] y = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double sum = 0;
      for (int t = 0; t < BAND.length && t <= i; t++) {
        sum += BAND[t] * x[i - t];
      }
      y[i] = sum;
    }
    return y;
  }

  private static double largestDbtp(double[][] channels) {
    TruePeakMeter meter = TruePeakMeter.ofBoth(2);
    meter.process(channels, 0, FRAMES);
    return meter.measure().stream().mapToDouble(TruePeakReading::fineDbtp).max().orElseThrow();
  }
}
