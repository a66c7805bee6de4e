package chainwright.dsp.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chainwright.quantity.SampleRate;
import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rate conversion measured with tones, as a measuring desk would, and its laws. */
class RateConversionTest {

  /** What is asked for: images at least 140 dB down, the pass band flat within 0.01 dB. */
  private static final double REJECTION_DB = 140;

  private static final double FLATNESS_DB = 0.01;

  private static double[][] convert(double fromHz, double toHz, double[][] in, int... blocks) {
    RateConversion conversion =
        RateConversion.design(SampleRate.ofHertz(fromHz), SampleRate.ofHertz(toHz));
    RateConverter converter = conversion.newConverter(in.length);
    return convert(conversion, converter, in, blocks);
  }

  private static double[][] convert(
      RateConversion conversion, RateConverter converter, double[][] in, int... blocks) {
    int expected = (int) conversion.outputFrames(in[0].length);
    double[][] out = new double[in.length][expected];
    int written = 0;
    int from = 0;
    for (int block = 0; from < in[0].length; block++) {
      int length = Math.min(blocks[block % blocks.length], in[0].length - from);
      int given = converter.process(in, from, length, out, written);
      assertThat(given).isLessThanOrEqualTo(converter.mostOutputFrames(length));
      written += given;
      from += length;
    }
    int last = converter.finish(out, written);
    assertThat(last).isLessThanOrEqualTo(converter.mostFinalFrames());
    assertThat(written + last).isEqualTo(expected);
    return out;
  }

  private static double[] tone(double rateHz, double hertz, int frames) {
    double[] samples = new double[frames];
    for (int n = 0; n < frames; n++) {
      samples[n] = Math.sin(2 * Math.PI * hertz * n / rateHz + 1);
    }
    return samples;
  }

  /** The same time at both rates, so that a tone's level and place are compared exactly. */
  @ParameterizedTest
  @CsvSource({
    "44100, 48000",
    "48000, 44100",
    "48000, 96000",
    "96000, 48000",
    "8000, 384000",
    "384000, 8000",
    "192000, 44100",
    "48000, 47999",
    "44101, 48000"
  })
  void tone_inThePassBand_keepsLevelAndPlaceAndHasNoImage(double fromHz, double toHz) {
    double lower = Math.min(fromHz, toHz);
    int frames = (int) (fromHz * 600 / lower) + 5000;
    for (double share : new double[] {0.01, 0.2, 0.35, 0.45}) {
      double[] out =
          convert(fromHz, toHz, new double[][] {tone(fromHz, share * lower, frames)}, 1000)[0];
      double[] wanted = tone(toHz, share * lower, out.length);
      // Away from the ends, where the silence beyond them is heard.
      int edge = (int) Math.ceil(250 * toHz / lower);
      double product = 0;
      double power = 0;
      for (int n = edge; n < out.length - edge; n++) {
        product += out[n] * wanted[n];
        power += wanted[n] * wanted[n];
      }
      double gain = product / power;
      double residue = 0;
      for (int n = edge; n < out.length - edge; n++) {
        residue += Math.pow(out[n] - gain * wanted[n], 2);
      }
      assertThat(20 * Math.log10(gain))
          .as("%s of the rate", share)
          .isCloseTo(0, within(FLATNESS_DB));
      assertThat(10 * Math.log10(residue / power))
          .as("images and noise at %s of the rate", share)
          .isLessThan(-REJECTION_DB);
    }
  }

  @ParameterizedTest
  @CsvSource({"48000, 44100", "96000, 48000", "384000, 8000", "48000, 47999"})
  void tone_aboveHalfTheLowerRate_isGone(double fromHz, double toHz) {
    int frames = (int) (fromHz * 1500 / toHz);
    for (double hertz : new double[] {0.5 * toHz, 0.9 * fromHz / 2, (toHz + fromHz) / 4}) {
      if (hertz < 0.5 * toHz) {
        continue;
      }
      double[] out = convert(fromHz, toHz, new double[][] {tone(fromHz, hertz, frames)}, 777)[0];
      double loudest = 0;
      for (int n = 250; n < out.length - 250; n++) {
        loudest = Math.max(loudest, Math.abs(out[n]));
      }
      assertThat(20 * Math.log10(loudest)).as("%s Hz", hertz).isLessThan(-REJECTION_DB);
    }
  }

  @Test
  void output_whateverTheBlocks_isTheSameBitForBit() {
    double[][] in = noise(3, 20_011);
    for (double toHz : new double[] {48_000, 22_050, 44_099, 44_100}) {
      double[][] whole = convert(44_100, toHz, in, Integer.MAX_VALUE);
      assertThat(convert(44_100, toHz, in, 1)).isDeepEqualTo(whole);
      assertThat(convert(44_100, toHz, in, 0, 977, 3)).isDeepEqualTo(whole);
      // Nor does it matter what else is converted with a channel.
      assertThat(convert(44_100, toHz, new double[][] {in[1]}, 512)[0]).isEqualTo(whole[1]);
    }
  }

  private static double[][] noise(int channels, int frames) {
    Random random = new Random(5);
    double[][] noise = new double[channels][frames];
    for (double[] channel : noise) {
      Arrays.setAll(channel, n -> random.nextGaussian());
    }
    return noise;
  }

  @Test
  void sameRate_passesSamplesAsTheyAre() {
    double[][] in = noise(2, 10_000);
    assertThat(convert(48_000, 48_000, in, 333)).isDeepEqualTo(in);
  }

  @ParameterizedTest
  @CsvSource({"44100, 48000", "48000, 44100", "48000, 96000", "96000, 48000", "44101, 48000"})
  void impulse_staysInItsPlace(double fromHz, double toHz) {
    double[] in = new double[2001];
    in[1000] = 1;
    double[] out = convert(fromHz, toHz, new double[][] {in}, 100)[0];
    double moment = 0;
    double sum = 0;
    for (int n = 0; n < out.length; n++) {
      moment += n * out[n];
      sum += out[n];
    }
    assertThat(moment / sum / toHz).isCloseTo(1000 / fromHz, within(1e-9));
  }

  @Test
  void constant_staysAsItIsAwayFromTheEnds() {
    double[] in = new double[3000];
    Arrays.fill(in, 0.7);
    for (double toHz : new double[] {48_000, 16_000, 384_000, 44_101}) {
      double[] out = convert(44_100, toHz, new double[][] {in}, 64)[0];
      assertThat(out[out.length / 2]).isCloseTo(0.7, within(1e-9));
    }
  }

  @Test
  void nothingAndSilenceAndOneSample_areStated() {
    assertThat(convert(44_100, 48_000, new double[1][0], 1)[0]).isEmpty();
    assertThat(convert(44_100, 48_000, new double[1][5000], 64)[0]).containsOnly(0);
    double[] one = convert(48_000, 96_000, new double[][] {{1}}, 1)[0];
    assertThat(one).hasSize(2);
    assertThat(one[0]).isCloseTo(0.95, within(1e-3));
  }

  @Test
  void converter_afterReset_isAsNew() {
    RateConversion conversion =
        RateConversion.design(SampleRate.ofHertz(44_100), SampleRate.ofHertz(48_000));
    RateConverter converter = conversion.newConverter(2);
    double[][] in = noise(2, 9000);
    double[][] first = convert(conversion, converter, in, 500);
    converter.reset();
    assertThat(convert(conversion, converter, in, 500)).isDeepEqualTo(first);
  }

  /** Source: com.sun.management's count of what this thread allocates. */
  @ParameterizedTest
  @CsvSource({"44100, 48000", "44101, 48000", "96000, 44100"})
  void running_allocatesNothing(double fromHz, double toHz) {
    RateConverter converter =
        RateConversion.design(SampleRate.ofHertz(fromHz), SampleRate.ofHertz(toHz)).newConverter(2);
    double[][] in = noise(2, 5000);
    double[][] out = new double[2][converter.mostOutputFrames(5000)];
    var threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long least = Long.MAX_VALUE;
    for (int run = 0; run < 20; run++) {
      long before = threads.getCurrentThreadAllocatedBytes();
      converter.process(in, 0, 5000, out, 0);
      least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
    }
    assertThat(least).as("bytes, once warm; the count itself takes some").isLessThan(1000);
  }

  @Test
  void sampleThatIsNotFinite_spoilsNoMoreThanTheLookAhead() {
    double[][] in = noise(1, 5000);
    in[0][2500] = Double.NaN;
    double[] out = convert(48_000, 96_000, in, 512)[0];
    int reach =
        RateConversion.design(SampleRate.ofHertz(48_000), SampleRate.ofHertz(96_000))
            .lookAheadFrames();
    for (int n = 0; n < out.length; n++) {
      if (Math.abs(n / 2.0 - 2500) > reach) {
        assertThat(out[n]).isFinite();
      }
    }
    assertThat(out[5000]).isNaN();
  }

  @Test
  void rate_thatIsNoWholeNumberOfHertz_throws() {
    assertThatThrownBy(
            () -> RateConversion.design(SampleRate.ofHertz(44_100.5), SampleRate.DEFAULT))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the sample rate must be a whole number of hertz, but was 44100.5 Hz");
  }
}
