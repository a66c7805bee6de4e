package chainwright.dsp.nonlinear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SaturatorTest {

  static Stream<SaturationSettings> settings() {
    return Stream.of(
        new TapeSaturation(3, 0.003, 8000, 1.5),
        new TapeSaturation(12, 0.01, 4000, -1),
        new TransformerSaturation(6, 0.003, 60, 0),
        new TransformerSaturation(0, 0.01, 150, 0.4),
        new ValveSaturation(6, 0.003, 0.3),
        new ValveSaturation(0, 0.02, 1));
  }

  static Stream<Arguments> settingsAndFrequencies() {
    return settings()
        .flatMap(one -> Stream.of(50.0, 1000.0, 6000.0).map(f -> Arguments.of(one, f)));
  }

  /** The model's harmonics are of continuous time; the run is taken at a rate that comes close. */
  @ParameterizedTest
  @MethodSource("settingsAndFrequencies")
  void run_sineAtAlignment_hasTheHarmonicsOfTheModel(
      SaturationSettings settings, double frequencyHz) {
    int period = 384;
    double rate = period * frequencyHz;
    SaturationModel model = settings.design();
    int settle = (int) Math.ceil(4 * frequencyHz) + 50;
    double[] wave = new double[(settle + 1) * period];
    double amplitude = Math.pow(10, SaturationModel.ALIGNMENT_LEVEL_DBFS / 20);
    for (int i = 0; i < wave.length; i++) {
      wave[i] = amplitude * Math.sin(2 * Math.PI * (i % period) / period);
    }
    run(model.newProcessor(rate, 1), wave, 0, wave.length);
    Harmonics expected = model.harmonics(frequencyHz, SaturationModel.ALIGNMENT_LEVEL_DBFS, 5);
    for (int n = 1; n <= 5; n++) {
      double sine = 0;
      double cosine = 0;
      for (int i = 0; i < period; i++) {
        double angle = 2 * Math.PI * n * i / period;
        sine += wave[settle * period + i] * Math.sin(angle) * 2 / period;
        cosine += wave[settle * period + i] * Math.cos(angle) * 2 / period;
      }
      // The bilinear transform bends frequencies by (π n / 384)²/3, at most 0.06 %.
      double tolerance = 2e-3 * expected.amplitude(n) + 1e-9;
      assertThat(sine).as("b%s", n).isCloseTo(expected.sineAmplitude(n), within(tolerance));
      assertThat(cosine).as("a%s", n).isCloseTo(expected.cosineAmplitude(n), within(tolerance));
    }
  }

  private static void run(Saturator saturator, double[] samples, int offset, int length) {
    saturator.process(new double[][] {samples}, offset, offset + length);
  }

  private static double[] noise(long seed) {
    return new Random(seed).doubles(5000, -1, 1).toArray();
  }

  @ParameterizedTest
  @MethodSource("settings")
  void run_anyBlockSizeAndReset_givesTheSameSamples(SaturationSettings settings) {
    SaturationModel model = settings.design();
    double[] whole = noise(1);
    run(model.newProcessor(96000, 1), whole, 0, whole.length);
    Saturator saturator = model.newProcessor(96000, 1);
    for (int block : new int[] {1, 7, 640}) {
      double[] parts = noise(1);
      for (int at = 0; at < parts.length; at += block) {
        run(saturator, parts, at, Math.min(block, parts.length - at));
      }
      assertThat(parts).isEqualTo(whole);
      saturator.reset();
    }
  }

  @ParameterizedTest
  @MethodSource("settings")
  void run_silenceNanAndInfinity_leaveASoundState(SaturationSettings settings) {
    Saturator saturator = settings.design().newProcessor(48000, 1);
    double[] samples = new double[100];
    run(saturator, samples, 0, 100);
    assertThat(samples).containsOnly(0.0);
    samples[0] = Double.NaN;
    samples[1] = Double.POSITIVE_INFINITY;
    samples[2] = Double.NEGATIVE_INFINITY;
    run(saturator, samples, 0, 100);
    assertThat(samples[0]).isNaN();
    for (int i = 1; i < 100; i++) {
      assertThat(samples[i]).isFinite();
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {8000, 44100, 384000})
  void run_fullScaleNoiseAtAnyRate_staysBounded(double sampleRateHz) {
    for (SaturationSettings settings : settings().toList()) {
      double[] samples = new Random(2).doubles(100_000, -1, 1).toArray();
      run(settings.design().newProcessor(sampleRateHz, 1), samples, 0, samples.length);
      for (double sample : samples) {
        assertThat(Math.abs(sample)).as("%s", settings).isLessThan(20);
      }
    }
  }

  @Test
  void run_wrongArguments_throw() {
    SaturationModel model = new ValveSaturation(0, 0.01, 0.2).design();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> model.newProcessor(0, 1))
        .withMessageContaining("sample rate must be finite and above 0, but was 0");
    assertThatExceptionOfType(IndexOutOfBoundsException.class)
        .isThrownBy(() -> run(model.newProcessor(48000, 1), new double[3], 2, 2));
  }
}
