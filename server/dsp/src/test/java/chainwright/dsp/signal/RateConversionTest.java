package chainwright.dsp.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.filter.RateFilterResponse;
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

  /**
   * A sine of 3990 Hz at 8 kHz lies in the transition, 116 dB down. Where it begins hard there is a
   * click 81 dB above what is left of it: a cut tone has a share at every frequency. scipy.signal
   * 1.10.1, {@code resample_poly} with a Kaiser window of 150 dB, gives −35.3 dBFS as well; faded
   * in over 0.2 s there is none.
   */
  @Test
  void tone_inTheTransition_clicksWhereItIsCutAndNowhereElse() {
    double[] hard = new double[8000];
    for (int i = 0; i < hard.length; i++) {
      hard[i] = Math.sin(2 * Math.PI * 3990 * i / 8000);
    }
    double[] faded = hard.clone();
    for (int i = 0; i < faded.length; i++) {
      double edge = Math.min(1, Math.min(i, faded.length - 1 - i) / 1600.0);
      faded[i] *= 0.5 - 0.5 * Math.cos(Math.PI * edge);
    }
    double[] cut = convert(8000, 48_000, new double[][] {hard}, 777)[0];
    assertThat(peakDb(cut, 0, 2400)).isCloseTo(-35.3, within(0.05));
    assertThat(peakDb(cut, 21_600, 26_400)).isLessThan(-110);
    double[] smooth = convert(8000, 48_000, new double[][] {faded}, 777)[0];
    assertThat(peakDb(smooth, 0, smooth.length)).isLessThan(-105);
  }

  private static double peakDb(double[] samples, int from, int to) {
    return 20 * Math.log10(Arrays.stream(samples, from, to).map(Math::abs).max().orElse(0));
  }

  /**
   * Tones in the pass band, the transition and the stop band, each against the response that is
   * plotted; the steepest and the widest filter that can be written. What is left is the ripple of
   * a filter whose images are no deeper than it.
   */
  @ParameterizedTest
  @CsvSource({
    "48000, 44100, 0.45, 150",
    "44100, 48000, 0.45, 150",
    "48000, 96000, 0.25, 60",
    "96000, 48000, 0.49, 180",
    "44100, 48000, 0.49, 180",
    "48000, 44100, 0.49, 60",
    "192000, 8000, 0.4, 100"
  })
  void tone_throughAnyFilter_hasThePlottedLevel(
      double fromHz, double toHz, double passBand, double attenuationDb) {
    RateFilter filter =
        new RateFilter(
            SampleRate.ofHertz(fromHz), SampleRate.ofHertz(toHz), passBand, attenuationDb);
    RateConversion conversion = RateConversion.design(filter);
    double lower = Math.min(fromHz, toHz);
    double ripple = Math.pow(10, -attenuationDb / 20);
    double transition = 0.5 - passBand;
    int frames = 2 * filter.reachFrames() + (int) (fromHz * 400 / lower);
    for (double share :
        new double[] {
          0.05, passBand, passBand + 0.3 * transition, passBand + 0.5 * transition, 0.4999, 0.6
        }) {
      double hertz = share * lower;
      if (hertz >= fromHz / 2) {
        continue;
      }
      double[] in = tone(fromHz, hertz, frames);
      double[] out = convert(conversion, conversion.newConverter(1), new double[][] {in}, 1000)[0];
      double[] wanted = tone(toHz, hertz, out.length);
      int edge = (int) Math.ceil(filter.reachFrames() * toHz / fromHz) + 1;
      double plotted =
          Math.pow(10, new RateFilterResponse(filter).toDecibels(new double[] {hertz})[0] / 20);
      double worst = 0;
      for (int n = edge; n < out.length - edge; n++) {
        double level = hertz < toHz / 2 ? plotted : 0;
        worst = Math.max(worst, Math.abs(out[n] - level * wanted[n]));
      }
      assertThat(worst).as("%s of the rate", share).isLessThan(3 * ripple);
      double expected = share <= passBand ? 1 : share >= 0.5 ? 0 : Double.NaN;
      if (!Double.isNaN(expected)) {
        assertThat(plotted).as("%s of the rate", share).isCloseTo(expected, within(3 * ripple));
      }
    }
    double middle = filter.cutoffHertz();
    assertThat(new RateFilterResponse(filter).toDecibels(new double[] {middle})[0])
        .isCloseTo(20 * Math.log10(0.5), within(1e-3));
  }

  @ParameterizedTest
  @CsvSource({"44100, 48000", "48000, 44100", "8000, 384000", "384000, 8000", "48000, 48000"})
  void input_thatIsNeeded_isExactlyEnough(double fromHz, double toHz) {
    RateConversion conversion =
        RateConversion.design(SampleRate.ofHertz(fromHz), SampleRate.ofHertz(toHz));
    for (int wanted : new int[] {0, 1, 2, 147, 1000}) {
      int needed = (int) conversion.inputFrames(wanted);
      assertThat(given(conversion, needed)).isGreaterThanOrEqualTo(wanted);
      if (needed > 0) {
        assertThat(given(conversion, needed - 1)).isLessThan(wanted);
      }
    }
  }

  private static int given(RateConversion conversion, int frames) {
    RateConverter converter = conversion.newConverter(1);
    double[][] out = new double[1][converter.mostOutputFrames(frames)];
    return converter.process(new double[1][frames], 0, frames, out, 0);
  }

  /** The slope of the level, against a difference of levels. */
  @Test
  void response_slopeOfTheLevel_isThatOfTheTransition() {
    RateFilter filter = RateFilter.usual(SampleRate.ofHertz(48_000), SampleRate.ofHertz(44_100));
    RateFilterResponse response = new RateFilterResponse(filter);
    double hertz = filter.cutoffHertz() - 100;
    double[] levels = response.toDecibels(new double[] {hertz - 0.5, hertz + 0.5});
    double[] slope = new double[1];
    response.addLogarithmicDerivative(new double[] {hertz}, slope, new double[1]);
    double neperPerRadian = (levels[1] - levels[0]) / 20 * Math.log(10) / (2 * Math.PI);
    assertThat(slope[0]).isCloseTo(neperPerRadian, within(1e-6 * Math.abs(neperPerRadian)));
  }

  @Test
  void filter_outsideItsRanges_throws() {
    SampleRate rate = SampleRate.DEFAULT;
    assertThatThrownBy(() -> new RateFilter(rate, rate, 0.5, 150))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the pass band must reach to between 0.2 and 0.49 of the rate, but was 0.5");
    assertThatThrownBy(() -> new RateFilter(rate, rate, 0.45, 181))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the attenuation must lie between 60 and 180 dB, but was 181.0");
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
