package chainwright.dsp.nonlinear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AliasesTest {

  private static final double TONE_HZ = 5000;
  private static final double KEPT_HZ = 20_000;

  /** Computed with numpy: the clipped tone sampled at the rate, and its discrete spectrum. */
  @ParameterizedTest
  @CsvSource({
    "1, 1, -39", "1, 2, -56", "1, 4, -69", "1, 8, -79",
    "3, 1, -35", "3, 2, -52", "3, 4, -64", "3, 8, -76",
    "6, 1, -33", "6, 2, -48", "6, 4, -59", "6, 8, -70"
  })
  void strongest_hardClip_isThatOfTheSampledWave(double overDb, int oversampling, double levelDb) {
    assertThat(ofHardClip(overDb, oversampling)).isCloseTo(levelDb, within(0.7));
  }

  /** Harmonics that fold more than once are left out; they add up to 1 dB. */
  @ParameterizedTest
  @CsvSource({"1", "2", "4"})
  void strongest_hardClip_isThatOfADiscreteFourierTransform(int oversampling) {
    double[] wave = new double[48 * oversampling];
    for (int i = 0; i < wave.length; i++) {
      wave[i] = Math.pow(10, 3.0 / 20) * Math.sin(2 * Math.PI * 5 * i / wave.length);
    }
    new HardClipShaper(0).process(wave, 0, wave.length);
    double strongest = 0;
    for (int kilohertz = 1; kilohertz <= 20; kilohertz++) {
      strongest = Math.max(strongest, kilohertz % 5 == 0 ? 0 : amplitude(wave, kilohertz));
    }
    double levelDb = 20 * Math.log10(strongest / amplitude(wave, 5));
    assertThat(ofHardClip(3, oversampling)).isCloseTo(levelDb, within(1.0));
  }

  @Test
  void strongest_toneBelowTheCeiling_isNothing() {
    assertThat(ofHardClip(-1, 1)).isEqualTo(Double.NEGATIVE_INFINITY);
  }

  private static double ofHardClip(double overDb, int oversampling) {
    double rateHz = 48_000.0 * oversampling;
    int count = Aliases.count(TONE_HZ, rateHz, KEPT_HZ);
    Harmonics harmonics = Harmonics.analyze(new HardClipShaper(0), overDb, count);
    return Aliases.strongestDb(harmonics, TONE_HZ, rateHz, KEPT_HZ);
  }

  private static double amplitude(double[] wave, int cycles) {
    double re = 0;
    double im = 0;
    for (int i = 0; i < wave.length; i++) {
      re += wave[i] * Math.cos(2 * Math.PI * cycles * i / wave.length);
      im += wave[i] * Math.sin(2 * Math.PI * cycles * i / wave.length);
    }
    return Math.hypot(re, im);
  }
}
