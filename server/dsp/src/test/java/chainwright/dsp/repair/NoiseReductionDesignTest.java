package chainwright.dsp.repair;

import static chainwright.dsp.repair.Sounds.RATE_HZ;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.Wiring;
import chainwright.dsp.spectral.FourierTransform;
import chainwright.quantity.SampleRate;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Properties of a method that has no reference figures; the bounds are ours, from a first run. */
class NoiseReductionDesignTest {

  private static final int FRAMES = (int) (4 * RATE_HZ);
  private static final double SIXTH = 1 / 6.0;

  private static NoiseReductionDesign design(double reductionDb) {
    return new NoiseReductionDesign(SampleRate.ofHertz(RATE_HZ), reductionDb, SIXTH);
  }

  @Test
  void signal_loweredByNothing_comesBack() {
    double[] signal = Sounds.sum(Sounds.syllables(FRAMES), Sounds.noise(FRAMES, -50, 1));
    double[] out = Sounds.render(design(0), signal)[0];
    assertThat(out).containsExactly(signal, within(1e-15));
  }

  /** From the first sample on: the noise is known before it is heard. */
  @ParameterizedTest
  @CsvSource({"3, 0.01", "6, 0.01", "12, 0.05", "18, 0.1", "30, 2"})
  void noise_alone_isLoweredByTheReduction(double reductionDb, double toleranceDb) {
    double[] noise = Sounds.noise(FRAMES, -50, 2);
    double[] out = Sounds.render(design(reductionDb), noise)[0];
    int second = (int) RATE_HZ;
    for (int from = 0; from < FRAMES; from += second / 2) {
      int to = from + second / 2;
      double changeDb =
          10 * Math.log10(Sounds.power(out, from, to) / Sounds.power(noise, from, to));
      assertThat(changeDb).as("from %d", from).isCloseTo(-reductionDb, within(toleranceDb));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {8_000, 44_100, 96_000, 384_000})
  void noise_atAnyRate_isLoweredByTheReduction(double rateHz) {
    NoiseReductionDesign design = new NoiseReductionDesign(SampleRate.ofHertz(rateHz), 12, SIXTH);
    int frames = (int) (0.5 * rateHz);
    double[] noise = Sounds.noise(frames, -50, 3);
    double[] out = Sounds.render(design, noise)[0];
    double changeDb =
        10 * Math.log10(Sounds.power(out, 0, frames) / Sounds.power(noise, 0, frames));
    assertThat(changeDb).isCloseTo(-12, within(0.15));
  }

  /**
   * Noise that sounds watery has single bins far above the rest, which shows as a higher kurtosis
   * of the powers; the ratio of both is near 1 where it stays what it was. Source of the measure:
   * Y. Uemura and others, "Automatic Optimization Scheme of Spectral Subtraction Based on Musical
   * Noise Assessment via Higher-Order Statistics", IWAENC 2008; from memory.
   */
  @ParameterizedTest
  @ValueSource(doubles = {6, 12})
  void noise_lowered_doesNotBecomeTones(double reductionDb) {
    double[] noise = Sounds.noise(FRAMES, -50, 4);
    double[] out = Sounds.render(design(reductionDb), noise)[0];
    assertThat(kurtosisOfPowers(out) / kurtosisOfPowers(noise)).isBetween(0.9, 1.2);
  }

  private static double kurtosisOfPowers(double[] signal) {
    int length = 1024;
    FourierTransform transform = new FourierTransform(length);
    double[] re = new double[transform.binCount()];
    double[] im = new double[transform.binCount()];
    double second = 0;
    double fourth = 0;
    int count = 0;
    for (int from = 0; from + length <= signal.length; from += length) {
      transform.forward(Arrays.copyOfRange(signal, from, from + length), re, im);
      for (int k = 8; k < length / 2 - 8; k++) {
        double power = re[k] * re[k] + im[k] * im[k];
        second += power * power;
        fourth += Math.pow(power, 4);
        count++;
      }
    }
    return fourth / count / Math.pow(second / count, 2);
  }

  /** The ratio of voice to everything else, before and after. */
  @ParameterizedTest
  @CsvSource({"0, 0, 1e-9", "3, 2.5, 3", "6, 5, 6", "12, 8, 12", "20, 10, 20"})
  void voiceInNoise_lowered_gainsAsTheSettingSays(double reductionDb, double least, double most) {
    double[] voice = Sounds.syllables(FRAMES);
    double[] noisy = Sounds.sum(voice, Sounds.noise(FRAMES, -25, 5));
    double[] out = Sounds.render(design(reductionDb), noisy)[0];
    double gainDb = Sounds.errorDb(voice, noisy, 0, FRAMES) - Sounds.errorDb(voice, out, 0, FRAMES);
    assertThat(gainDb).isBetween(least - 1e-9, most);
  }

  @ParameterizedTest
  @CsvSource({"6, -49", "40, -49"})
  void voiceWithHardlyAnyNoise_lowered_isHardlyChanged(double reductionDb, double mostErrorDb) {
    double[] voice = Sounds.syllables(FRAMES);
    double[] noisy = Sounds.sum(voice, Sounds.noise(FRAMES, -70, 6));
    double[] out = Sounds.render(design(reductionDb), noisy)[0];
    assertThat(Sounds.errorDb(voice, out, 0, FRAMES)).isLessThan(mostErrorDb);
  }

  @Test
  void channels_ofOneSound_moveAlike() {
    double[] voice = Sounds.sum(Sounds.syllables(FRAMES), Sounds.noise(FRAMES, -40, 7));
    double[] half = Arrays.stream(voice).map(x -> x / 2).toArray();
    double[][] out = Sounds.render(design(12), voice, half);
    assertThat(out[1]).isEqualTo(Arrays.stream(out[0]).map(x -> x / 2).toArray());
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 511, 513, 100_000})
  void blocks_ofAnySize_changeNoBit(int block) {
    double[] signal = Sounds.sum(Sounds.syllables(20_000), Sounds.noise(20_000, -40, 8));
    NoiseReductionDesign design = design(12);
    double[][] whole = Sounds.render(design, signal, signal);
    assertThat(
            Sounds.render(design.newProcessor(Wiring.ofChannels(2)), design, block, signal, signal))
        .isDeepEqualTo(whole);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.NEGATIVE_INFINITY, 1e80})
  void sample_thatIsNone_comesOutInItsPlaceAndLeavesNothingBehind(double stray) {
    double[] signal = Sounds.noise(FRAMES, -40, 9);
    double[] with = signal.clone();
    double[] without = signal.clone();
    with[50_000] = stray;
    without[50_000] = 0;
    double[] out = Sounds.render(design(12), with)[0];
    double[] expected = Sounds.render(design(12), without)[0];
    expected[50_000] = stray;
    assertThat(out).isEqualTo(expected);
  }

  /** Silence before and after a sound teaches nothing: the noise is lowered at once. */
  @Test
  void silence_aroundNoise_staysSilence() {
    double[] noise = Sounds.noise(FRAMES, -50, 10);
    Arrays.fill(noise, 0, 30_000, 0);
    Arrays.fill(noise, 60_000, 120_000, 0);
    double[] out = Sounds.render(design(12), noise)[0];
    assertThat(Sounds.power(out, 0, 25_000)).isZero();
    assertThat(Sounds.power(out, 65_000, 115_000)).isZero();
    double after = Sounds.power(out, 122_000, 190_000) / Sounds.power(noise, 122_000, 190_000);
    assertThat(10 * Math.log10(after)).isCloseTo(-12, within(0.1));
  }

  @Test
  void design_outsideItsRange_throws() {
    assertThatThrownBy(() -> design(-1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "the reduction must lie between 0 and 100 dB and the smoothing between 0 and 10"
                + " octaves, but were -1.0 and 0.16666666666666666");
  }
}
