package chainwright.dsp.loudness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.reference.ReferenceTable;
import chainwright.quantity.SampleRate;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LevelMeterTest {

  private static final double RATE_HZ = 48_000;
  private static final double TABLE_DB = 1e-3;
  private static final double FULL = LevelMeter.FLOATING_POINT_FULL_SCALE;

  private static LevelMeter measured(double[][] signal, double fullScale, int block) {
    LevelMeter meter = new LevelMeter(SampleRate.ofHertz(RATE_HZ), signal.length, fullScale);
    for (int from = 0; from < signal[0].length; from += block) {
      meter.process(signal, from, Math.min(block, signal[0].length - from));
    }
    return meter;
  }

  private static ChannelLevels levels(double... samples) {
    return measured(new double[][] {samples}, FULL, 777).measure().get(0);
  }

  /** Wave forms of 1000 samples a period, each over a second. */
  private static double[] wave(DoubleUnaryOperator form, double peakDbfs) {
    double[] samples = new double[(int) RATE_HZ];
    for (int n = 0; n < samples.length; n++) {
      samples[n] = form.applyAsDouble(n % 1000 / 1000.0) * TestSignal.factor(peakDbfs);
    }
    return samples;
  }

  private static double form(String name, double turn) {
    return switch (name) {
      case "sine" -> Math.sin(2 * Math.PI * turn);
      case "square" -> turn < 0.5 ? 1 : -1;
      case "triangle" -> 1 - 4 * Math.abs(turn - 0.5);
      case "dc" -> 1;
      case "pulse_duty_0.1_0..A" -> turn < 0.0999 ? 1 : 0;
      default -> throw new IllegalArgumentException(name);
    };
  }

  static List<ReferenceTable.Row> waveForms() {
    return ReferenceTable.read(LevelMeterTest.class, "rms_conventions.csv");
  }

  /** Source: reference data, see ORIGIN.md in the resources. */
  @ParameterizedTest
  @MethodSource("waveForms")
  void levels_ofWaveForm_areThoseOfItsFormula(ReferenceTable.Row row) {
    ChannelLevels levels =
        levels(wave(turn -> form(row.text("waveform"), turn), row.number("peak_dbfs")));
    assertThat(levels.samplePeakDbfs()).isCloseTo(row.number("peak_dbfs"), within(TABLE_DB));
    assertThat(levels.rmsDbfs()).isCloseTo(row.number("rms_dbfs_aes17"), within(TABLE_DB));
    assertThat(levels.crestDb()).isCloseTo(row.number("crest_db"), within(TABLE_DB));
  }

  /** Source: reference data, see ORIGIN.md in the resources. */
  @Test
  void rms_ofReferenceCase_equalsTheCalculation() {
    for (JsonObject one : LoudnessCases.having("rms_dbfs_sine_ref")) {
      JsonArray expected = one.getAsJsonArray("rms_dbfs_sine_ref");
      double[][] signal = LoudnessCases.signal(one);
      LevelMeter meter =
          new LevelMeter(SampleRate.ofHertz(LoudnessCases.rateHz(one)), signal.length, FULL);
      meter.process(signal, 0, signal[0].length);
      List<ChannelLevels> levels = meter.measure();
      for (int c = 0; c < signal.length; c++) {
        double actual = levels.get(c).rmsDbfs();
        if (expected.get(c).isJsonNull()) {
          assertThat(actual).isEqualTo(Double.NEGATIVE_INFINITY);
        } else {
          assertThat(actual)
              .as("%s, channel %d", one.get("id"), c)
              .isCloseTo(expected.get(c).getAsDouble(), within(1e-9));
        }
      }
    }
  }

  @Test
  void noiseFloor_ofPhrasesOverNoise_isTheNoiseWithoutOffset() {
    double[] noise = TestSignal.noise(9, TestSignal.envelope(RATE_HZ, TestSignal.segment(10, -60)));
    double[] samples = new double[noise.length];
    for (int n = 0; n < samples.length; n++) {
      boolean isPhrase = n / 48_000 % 2 == 0;
      samples[n] = noise[n] + 0.01 + (isPhrase ? 0.5 * Math.sin(n * 0.05) : 0);
    }
    Arrays.fill(samples, 0, 20_000, 0); // Digital silence before the recording began.
    // Uniform noise has a third of its peak's square, and sines half of it.
    double noiseDbfs = -60 + 10 * Math.log10(2 / 3.0);
    assertThat(levels(samples).noiseFloorDbfs()).isCloseTo(noiseDbfs, within(0.5));
    assertThat(levels(samples).offsetAmplitude()).isCloseTo(0.0096, within(1e-3));
  }

  @Test
  void noiseFloor_ofSilenceOrOffsetAlone_isNone() {
    assertThat(levels(new double[48_000]).noiseFloorDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
    double[] offset = new double[48_000];
    Arrays.fill(offset, 0.3);
    assertThat(levels(offset).noiseFloorDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(levels(new double[1000]).noiseFloorDbfs()).isNaN();
  }

  @Test
  void clippedRuns_ofThreeAndMoreOfOneSign_areCounted() {
    double[] samples = new double[4000];
    Arrays.fill(samples, 100, 103, 1);
    Arrays.fill(samples, 200, 202, 1);
    Arrays.fill(samples, 300, 303, -1.5);
    Arrays.fill(samples, 303, 310, 1);
    Arrays.fill(samples, 3998, 4000, 1);
    assertThat(levels(samples).clipped()).isEqualTo(new ClippedRuns(3, 13, 7, 100));
    Arrays.fill(samples, 3990, 4000, 1);
    assertThat(levels(samples).clipped()).isEqualTo(new ClippedRuns(4, 23, 10, 100));
    assertThat(levels(new double[100]).clipped()).isEqualTo(ClippedRuns.NONE);
  }

  @Test
  void fullScale_of16Bits_isTheLargestPositiveNumber() {
    double fullScale = LevelMeter.fullScale(16);
    assertThat(fullScale).isEqualTo(32767.0 / 32768);
    double[] samples = new double[100];
    Arrays.fill(samples, 50, 54, fullScale);
    ClippedRuns runs = measured(new double[][] {samples}, fullScale, 52).measure().get(0).clipped();
    assertThat(runs).isEqualTo(new ClippedRuns(1, 4, 4, 50));
    assertThat(levels(samples).clipped()).isEqualTo(ClippedRuns.NONE);
  }

  @Test
  void correlation_ofRelatedChannels_isKnown() {
    double[] envelope = TestSignal.envelope(RATE_HZ, TestSignal.segment(3, -10));
    double[] one = TestSignal.noise(1, envelope);
    double[] other = TestSignal.noise(2, envelope);
    assertThat(correlation(one, TestSignal.scaled(one, 0.1))).isCloseTo(1, within(1e-12));
    assertThat(correlation(one, TestSignal.scaled(one, -2))).isCloseTo(-1, within(1e-12));
    assertThat(correlation(one, other)).isCloseTo(0, within(0.01));
    assertThat(correlation(one, new double[one.length])).isNaN();
    assertThat(measured(new double[][] {one}, FULL, 100).correlation()).isNaN();
  }

  private static double correlation(double[] left, double[] right) {
    return measured(new double[][] {left, right}, FULL, 4096).correlation();
  }

  @Test
  void levels_ofNothingAndOfOneSample_areStated() {
    ChannelLevels none = levels();
    assertThat(none.samplePeakDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(none.rmsDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(none.crestDb()).isNaN();
    assertThat(none.offsetAmplitude()).isZero();
    ChannelLevels one = levels(-0.5);
    assertThat(one.samplePeakDbfs()).isCloseTo(20 * Math.log10(0.5), within(1e-12));
    assertThat(one.crestDb()).isCloseTo(0, within(1e-12));
    assertThat(one.offsetAmplitude()).isEqualTo(-0.5);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 63, 2400, 1025})
  void allReadings_whateverTheBlocks_areTheSameBitForBit(int block) {
    double[] envelope =
        TestSignal.envelope(RATE_HZ, TestSignal.segment(1, -30), TestSignal.segment(3.2, 3));
    double[][] signal = {TestSignal.noise(1, envelope), TestSignal.noise(2, envelope)};
    Arrays.fill(signal[1], 70_000, 70_100, 1.2);
    signal[0][5] = Double.NaN;
    SignalReading whole = reading(signal, signal[0].length);
    assertThat(whole.rejectedCount()).isEqualTo(1);
    assertThat(whole.frameCount()).isEqualTo(signal[0].length);
    assertThat(reading(signal, block)).isEqualTo(whole);
  }

  private static SignalReading reading(double[][] signal, int block) {
    SignalMeter meter =
        new SignalMeter(SampleRate.ofHertz(RATE_HZ), ChannelPosition.usual(signal.length), FULL);
    SignalReading first = null;
    for (int run = 0; run < 2; run++) {
      meter.reset();
      for (int from = 0; from < signal[0].length; from += block) {
        meter.process(signal, from, Math.min(block, signal[0].length - from));
      }
      assertThat(first).as("after reset as new").isIn(null, meter.measure());
      first = meter.measure();
    }
    return meter.measure();
  }

  /** Source: com.sun.management's count of what this thread allocates. */
  @Test
  void running_allocatesNothing() {
    double[] envelope = TestSignal.envelope(RATE_HZ, TestSignal.segment(4, -6));
    double[][] signal = {TestSignal.noise(1, envelope), TestSignal.noise(2, envelope)};
    SignalMeter meter =
        new SignalMeter(SampleRate.ofHertz(RATE_HZ), ChannelPosition.usual(2), FULL);
    var threads =
        (com.sun.management.ThreadMXBean) java.lang.management.ManagementFactory.getThreadMXBean();
    long least = Long.MAX_VALUE;
    for (int run = 0; run < 20; run++) {
      long before = threads.getCurrentThreadAllocatedBytes();
      meter.process(signal, 0, signal[0].length);
      least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
    }
    assertThat(least).as("bytes for 4 s, once warm; the count itself takes some").isLessThan(1000);
  }
}
