package chainwright.dsp.dynamics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LimiterTest {

  private static double[][] noise(long seed, int channels, int length) {
    Random random = new Random(seed);
    double[][] samples = new double[channels][length];
    for (int i = 0; i < length; i++) {
      double scale = i % 4000 < 1500 ? 2 : i % 4000 < 1600 ? 0 : 0.05;
      for (double[] channel : samples) {
        channel[i] = scale * random.nextGaussian();
      }
    }
    return samples;
  }

  private static Limiter limiter(double lookAheadSeconds, double releaseSeconds, int channels) {
    return new LimiterDesign(new LimiterCurve(-1, 0), lookAheadSeconds, releaseSeconds)
        .newProcessor(48000, channels);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0.1, 0, 48000",
    "0.003, 0.12, 0, 48000",
    "0.003, 0.001, 6, 44100",
    "0.02, 0, 0, 384000",
    "0.0005, 5, 2, 8000"
  })
  void limiter_loudNoise_neverPassesItsCeiling(
      double lookAhead, double release, double knee, double rate) {
    Limiter limiter =
        new LimiterDesign(new LimiterCurve(-1, knee), lookAhead, release).newProcessor(rate, 2);
    double[][] samples = noise(5, 2, 30000);
    limiter.process(samples, 0, 30000);
    double ceiling = Math.pow(10, -1.0 / 20);
    for (double[] channel : samples) {
      for (double sample : channel) {
        assertThat(Math.abs(sample)).isLessThanOrEqualTo(ceiling * (1 + 1e-15));
      }
    }
  }

  @Test
  void limiter_belowTheCeiling_onlyDelays() {
    Limiter limiter = limiter(0.003, 0.01, 1);
    assertThat(limiter.latencySamples()).isEqualTo(144);
    double[][] samples = noise(5, 1, 400);
    double[] original = new double[400];
    for (int i = 0; i < 400; i++) {
      samples[0][i] /= 20;
      original[i] = samples[0][i];
    }
    limiter.process(samples, 0, 400);
    for (int i = 0; i < 400; i++) {
      assertThat(samples[0][i]).isEqualTo(i < 144 ? 0 : original[i - 144]);
    }
  }

  @Test
  void limiter_onePeak_isReducedExactlyAndSmoothlyApproached() {
    Limiter limiter = limiter(0.001, 0.05, 1);
    double[][] samples = new double[1][6000];
    Arrays.fill(samples[0], 0.1);
    samples[0][1000] = 2;
    limiter.process(samples, 0, 6000);
    int out = 1000 + limiter.latencySamples();
    assertThat(samples[0][out]).isCloseTo(Math.pow(10, -1.0 / 20), within(1e-12));
    assertThat(samples[0][999]).as("before the look-ahead").isEqualTo(0.1);
    for (int i = 1000; i < out; i++) {
      assertThat(samples[0][i]).as("fading down").isLessThan(samples[0][i - 1]);
    }
    for (int i = out + limiter.latencySamples() + 1; i < 5900; i++) {
      assertThat(samples[0][i]).as("recovering").isGreaterThan(samples[0][i - 1]);
    }
    // Well into the release, the reduction falls by 1/e in one release of 2400 samples.
    double early = Math.log(0.1 / samples[0][1200]);
    double late = Math.log(0.1 / samples[0][3600]);
    assertThat(late / early).isCloseTo(Math.exp(-1), within(1e-9));
  }

  @Test
  void limiter_peaksMeasuredElsewhere_followsThem() {
    Limiter limiter = limiter(0, 0, 1);
    double[][] samples = {{0.5, 0.5, 2}};
    limiter.process(samples, new double[] {0.5, Math.pow(10, 5.0 / 20), 0.1}, 0, 3);
    assertThat(samples[0])
        .containsExactly(
            new double[] {0.5, 0.5 * Math.pow(10, -6.0 / 20), Math.pow(10, -1.0 / 20)},
            within(1e-12));
  }

  @Test
  void limiter_anyBlockSize_givesTheSameSamples() {
    double[][] whole = noise(9, 2, 9000);
    limiter(0.002, 0.1, 2).process(whole, 0, 9000);
    for (int block : new int[] {1, 7, 64, 5000}) {
      double[][] parts = noise(9, 2, 9000);
      Limiter limiter = limiter(0.002, 0.1, 2);
      for (int at = 0; at < 9000; at += block) {
        limiter.process(parts, at, Math.min(block, 9000 - at));
      }
      assertThat(parts).isDeepEqualTo(whole);
    }
  }

  @Test
  void limiter_reset_isAsNew() {
    double[][] expected = noise(9, 2, 3000);
    limiter(0.002, 0.1, 2).process(expected, 0, 3000);
    Limiter used = limiter(0.002, 0.1, 2);
    used.process(noise(10, 2, 2777), 0, 2777);
    used.reset();
    double[][] actual = noise(9, 2, 3000);
    used.process(actual, 0, 3000);
    assertThat(actual).isDeepEqualTo(expected);
  }

  @Test
  void limiter_nanAndInfinity_leaveASoundState() {
    Limiter limiter = limiter(0, 0, 1);
    double[][] samples = {{Double.NaN, 0.5, Double.POSITIVE_INFINITY, 0.5}};
    limiter.process(samples, 0, 4);
    assertThat(samples[0][0]).isNaN();
    assertThat(samples[0][1]).isEqualTo(0.5);
    assertThat(samples[0][2]).isCloseTo(Math.pow(10, -1.0 / 20), within(1e-12));
    assertThat(samples[0][3]).isEqualTo(0.5);
  }

  @Test
  void limiter_wrongArguments_throw() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> limiter(-0.001, 0.1, 1))
        .withMessageContaining("look-ahead must lie between 0 s and 1 s, but was -0.001 s");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> limiter(0.001, 0.1, 0))
        .withMessageContaining("channels must be at least 1, but was 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> limiter(0.001, 0.1, 2).process(new double[1][4], 0, 4))
        .withMessageContaining("channels must be 2, but was 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> limiter(0.001, 0.1, 1).process(new double[1][4], 1, 4))
        .withMessageContaining("must lie within the array of 4 samples");
  }
}
