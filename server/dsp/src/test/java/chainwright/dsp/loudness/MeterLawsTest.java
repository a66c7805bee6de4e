package chainwright.dsp.loudness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chainwright.quantity.SampleRate;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds of loudness and true peak for any signal. */
class MeterLawsTest {

  private static final double RATE_HZ = 44_100;

  /** Every phase and place is computed here, without any left out. */
  private static final double WHOLE_SEARCH_DB = 1e-9;

  private record Readings(LoudnessReading loudness, List<TruePeakReading> peaks) {}

  /** Noise, rising in steps, with a few peaks, silence and a burst. */
  private static double[][] material() {
    double[] envelope =
        TestSignal.envelope(
            RATE_HZ,
            TestSignal.segment(1, -30),
            TestSignal.segment(1.5, -12),
            TestSignal.segment(0.5, Double.NEGATIVE_INFINITY),
            TestSignal.segment(2.03, -20));
    double[] left = TestSignal.noise(3, envelope);
    double[] right = TestSignal.sine(RATE_HZ, 3017, envelope);
    left[70_001] = 0.9;
    left[70_002] = 0.9;
    right[100] = -1;
    return new double[][] {left, right, TestSignal.noise(5, envelope)};
  }

  private static Readings measure(double[][] signal, int... blocks) {
    LoudnessMeter loudness = loudnessMeter(signal.length);
    TruePeakMeter peak = TruePeakMeter.ofBoth(signal.length);
    int from = 0;
    for (int block = 0; from < signal[0].length; block++) {
      int length = Math.min(blocks[block % blocks.length], signal[0].length - from);
      loudness.process(signal, from, length);
      peak.process(signal, from, length);
      from += length;
    }
    return new Readings(loudness.measure(), peak.measure());
  }

  private static LoudnessMeter loudnessMeter(int channelCount) {
    return new LoudnessMeter(SampleRate.ofHertz(RATE_HZ), ChannelPosition.usual(channelCount));
  }

  static int[][] blockSizes() {
    return new int[][] {{1}, {7, 0, 441}, {64}, {1023, 1, 1025}, {100_000}};
  }

  @ParameterizedTest
  @MethodSource("blockSizes")
  void readings_whateverTheBlocks_areTheSameBitForBit(int... blocks) {
    assertThat(measure(material(), blocks)).isEqualTo(measure(material(), Integer.MAX_VALUE));
  }

  @Test
  void truePeak_ofAnySignal_isThatOfASearchThatLeavesNothingOut() {
    Random random = new Random(20);
    for (int trial = 0; trial < 40; trial++) {
      double[] signal = new double[3000];
      double level = 1e-3;
      for (int n = 0; n < signal.length; n++) {
        level *= random.nextInt(200) == 0 ? 3 * random.nextDouble() : 1.0005;
        signal[n] = level * random.nextGaussian();
      }
      TruePeakReading reading = measure(new double[][] {signal}, 500).peaks().get(0);
      assertThat(reading.annex2Dbtp()).isCloseTo(wholeAnnex2(signal), within(WHOLE_SEARCH_DB));
      assertThat(reading.fineDbtp()).isCloseTo(wholeFine(signal), within(WHOLE_SEARCH_DB));
    }
  }

  private static double wholeAnnex2(double[] signal) {
    double[] padded = padded(signal);
    double[] largest = new double[padded.length];
    Annex2Interpolator.interpolate(padded, largest, Annex2Interpolator.REACH, padded.length);
    return 20 * Math.log10(Arrays.stream(largest).max().orElseThrow());
  }

  private static double wholeFine(double[] signal) {
    double[] padded = padded(signal);
    double largest = 0;
    for (int n = 40; n < padded.length - 40; n++) {
      for (int place = 0; place < FineInterpolator.FACTOR; place++) {
        largest = Math.max(largest, Math.abs(FineInterpolator.at(padded, n, place)));
      }
    }
    return 20 * Math.log10(largest);
  }

  private static double[] padded(double[] signal) {
    double[] padded = new double[signal.length + 200];
    System.arraycopy(signal, 0, padded, 100, signal.length);
    return padded;
  }

  /** Source: the reading of a perfect interpolation of n places is low by at most cos(π f / n). */
  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.1, 0.25, 0.333, 0.4, 0.45})
  void fineTruePeak_ofTone_isItsAmplitude(double share) {
    double[] tone = TestSignal.fadedTone(RATE_HZ, 1 / share, 0.5, 33, 0.5);
    double reading = measure(new double[][] {tone}, 4096).peaks().get(0).fineDbtp();
    assertThat(reading).isCloseTo(20 * Math.log10(0.5), within(0.02));
  }

  @Test
  void loudness_turnedUp_risesByAsMuch() {
    double[][] soft = material();
    double[][] loud =
        Arrays.stream(soft)
            .map(channel -> TestSignal.scaled(channel, TestSignal.factor(6)))
            .toArray(double[][]::new);
    Readings before = measure(soft, 1000);
    Readings after = measure(loud, 1000);
    assertThat(after.loudness().integratedLufs() - before.loudness().integratedLufs())
        .isCloseTo(6, within(1e-9));
    assertThat(after.peaks().get(0).fineDbtp() - before.peaks().get(0).fineDbtp())
        .isCloseTo(6, within(1e-9));
  }

  @Test
  void monoChannel_twice_isThreeDecibelsLouder() {
    double[] tone =
        TestSignal.sine(RATE_HZ, 997, TestSignal.envelope(RATE_HZ, TestSignal.segment(4, -20)));
    double once = measure(new double[][] {tone}, 999).loudness().integratedLufs();
    double twice = measure(TestSignal.twice(tone), 999).loudness().integratedLufs();
    assertThat(twice - once).isCloseTo(10 * Math.log10(2), within(1e-9));
  }

  @Test
  void silence_readsNegativeInfinityAndNoRange() {
    Readings readings = measure(new double[2][200_000], 4096);
    double silence = Double.NEGATIVE_INFINITY;
    assertThat(readings.loudness())
        .isEqualTo(new LoudnessReading(silence, silence, silence, silence, Double.NaN));
    assertThat(readings.peaks())
        .containsExactly(
            new TruePeakReading(silence, silence), new TruePeakReading(silence, silence));
  }

  @Test
  void recording_shorterThanTheWindows_hasNoReading() {
    double nothing = Double.NaN;
    LoudnessReading none = new LoudnessReading(nothing, nothing, nothing, nothing, nothing);
    assertThat(measure(new double[1][0], 1).loudness()).isEqualTo(none);
    Readings one = measure(new double[][] {{0.5}}, 1);
    assertThat(one.loudness()).isEqualTo(none);
    assertThat(one.peaks().get(0).fineDbtp()).isCloseTo(20 * Math.log10(0.5), within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 1e300, 1e-310})
  void sample_thatIsNoAudio_countsAsSilence(double odd) {
    double[][] clean = material();
    double[][] soiled = material();
    for (int n = 1000; n < 200_000; n += 1013) {
      clean[0][n] = 0;
      soiled[0][n] = odd;
    }
    assertThat(measure(soiled, 512)).isEqualTo(measure(clean, 512));
  }

  @Test
  void meter_afterReset_isAsNew() {
    double[][] signal = material();
    LoudnessMeter loudness = loudnessMeter(signal.length);
    TruePeakMeter peak = TruePeakMeter.ofBoth(signal.length);
    LoudnessReading first = null;
    for (int run = 0; run < 2; run++) {
      loudness.process(signal, 0, signal[0].length);
      peak.process(signal, 0, signal[0].length);
      Readings readings = new Readings(loudness.measure(), peak.measure());
      assertThat(readings).isEqualTo(measure(signal, 1 << 20));
      assertThat(first).isIn(null, readings.loudness());
      first = readings.loudness();
      loudness.reset();
      peak.reset();
    }
  }

  @Test
  void measure_onTheWay_disturbsNothing() {
    double[][] signal = material();
    TruePeakMeter peak = TruePeakMeter.ofBoth(signal.length);
    for (int from = 0; from < signal[0].length; from += 441) {
      peak.process(signal, from, Math.min(441, signal[0].length - from));
      if (from % 4410 == 0) {
        assertThat(peak.measure()).hasSize(signal.length);
      }
    }
    assertThat(peak.measure()).isEqualTo(measure(signal, 441).peaks());
  }

  @Test
  void block_outsideTheArrayOrOfOtherChannels_throws() {
    TruePeakMeter meter = TruePeakMeter.ofAnnex2(2);
    assertThatThrownBy(() -> meter.process(new double[2][10], 5, 6))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the block must lie within the array of 10 samples, but was 6 samples from 5");
    assertThatThrownBy(() -> meter.process(new double[1][10], 0, 10))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the number of channels must be 2, but was 1");
  }
}
