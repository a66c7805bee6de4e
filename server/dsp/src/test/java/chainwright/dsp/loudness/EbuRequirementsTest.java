package chainwright.dsp.loudness;

import static chainwright.dsp.loudness.TestSignal.segment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.loudness.TestSignal.Segment;
import chainwright.dsp.signal.KaiserWindow;
import chainwright.quantity.SampleRate;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The signals that a meter must read rightly to be of EBU mode, made by their description; those
 * that are excerpts of programmes (7 and 8 of one, 5 and 6 of the other) cannot be made.
 *
 * <p>Source: EBU Tech 3341 (2023), table 1, and EBU Tech 3342 (2023), table 1, as quoted by other
 * test suites.
 */
class EbuRequirementsTest {

  private static final SampleRate RATE = SampleRate.ofHertz(48_000);
  private static final double LOUDNESS_LU = 0.1;
  private static final double RANGE_LU = 1;
  private static final double TRUE_PEAK_ABOVE_DB = 0.2;
  private static final double TRUE_PEAK_BELOW_DB = 0.4;
  private static final double SILENCE = Double.NEGATIVE_INFINITY;
  private static final int TEN_MILLISECONDS = 480;

  static List<List<Segment>> steadyProgrammes() {
    return List.of(
        List.of(segment(10, -36), segment(60, -23), segment(10, -36)),
        List.of(
            segment(10, -72),
            segment(10, -36),
            segment(60, -23),
            segment(10, -36),
            segment(10, -72)),
        List.of(segment(20, -26), segment(20.1, -20), segment(20, -26)));
  }

  @ParameterizedTest
  @CsvSource({"-23", "-33"})
  void cases1And2_steadyTone_readItsLevel(double level) {
    LoudnessReading reading = measure(segment(20, level));
    assertThat(reading.momentaryMaxLufs()).isCloseTo(level, within(LOUDNESS_LU));
    assertThat(reading.shortTermMaxLufs()).isCloseTo(level, within(LOUDNESS_LU));
    assertThat(reading.integratedLufs()).isCloseTo(level, within(LOUDNESS_LU));
  }

  @ParameterizedTest
  @MethodSource("steadyProgrammes")
  void cases3To5_softAndLoud_areGated(List<Segment> segments) {
    assertThat(measure(segments.toArray(Segment[]::new)).integratedLufs())
        .isCloseTo(-23, within(LOUDNESS_LU));
  }

  @Test
  void case6_fiveChannels_areWeighted() {
    double[] tone = tone(segment(20, 0));
    LoudnessMeter meter =
        new LoudnessMeter(
            RATE,
            List.of(
                ChannelPosition.LEFT,
                ChannelPosition.RIGHT,
                ChannelPosition.CENTRE,
                ChannelPosition.LOW_FREQUENCY,
                ChannelPosition.LEFT_SURROUND,
                ChannelPosition.RIGHT_SURROUND));
    double[][] channels = {
      TestSignal.scaled(tone, TestSignal.factor(-28)),
      TestSignal.scaled(tone, TestSignal.factor(-28)),
      TestSignal.scaled(tone, TestSignal.factor(-24)),
      tone,
      TestSignal.scaled(tone, TestSignal.factor(-30)),
      TestSignal.scaled(tone, TestSignal.factor(-30))
    };
    meter.process(channels, 0, tone.length);
    assertThat(meter.measure().integratedLufs()).isCloseTo(-23, within(LOUDNESS_LU));
  }

  @Test
  void case9_fastChange_leavesShortTermConstant() {
    Segment[] segments = repeated(5, segment(1.34, -20), segment(1.66, -30));
    double[][] signal = TestSignal.twice(tone(segments));
    LoudnessMeter meter = stereoMeter();
    for (int from = 0; from < signal[0].length; from += TEN_MILLISECONDS) {
      meter.process(signal, from, TEN_MILLISECONDS);
      if (from + TEN_MILLISECONDS > 3 * RATE.hertz()) {
        assertThat(meter.shortTermLufs()).isCloseTo(-23, within(LOUDNESS_LU));
      }
    }
  }

  @Test
  void case12_fasterChange_leavesMomentaryConstant() {
    Segment[] segments = repeated(25, segment(0.18, -20), segment(0.22, -30));
    double[][] signal = TestSignal.twice(tone(segments));
    LoudnessMeter meter = stereoMeter();
    for (int from = 0; from < signal[0].length; from += TEN_MILLISECONDS) {
      meter.process(signal, from, TEN_MILLISECONDS);
      if (from + TEN_MILLISECONDS > RATE.hertz()) {
        assertThat(meter.momentaryLufs()).isCloseTo(-23, within(LOUDNESS_LU));
      }
    }
  }

  static IntStream twenty() {
    return IntStream.range(0, 20);
  }

  @ParameterizedTest
  @MethodSource("twenty")
  void case10_threeSecondsAnywhere_giveTheShortTermMaximum(int i) {
    LoudnessReading reading =
        measure(segment(0.15 * i, SILENCE), segment(3, -23), segment(1, SILENCE));
    assertThat(reading.shortTermMaxLufs()).isCloseTo(-23, within(LOUDNESS_LU));
  }

  @ParameterizedTest
  @MethodSource("twenty")
  void case11_threeSecondsRisingInLevel_giveTheShortTermMaximum(int i) {
    LoudnessReading reading =
        measure(segment(0.15 * i, SILENCE), segment(3, -38.0 + i), segment(3 - 0.15 * i, SILENCE));
    assertThat(reading.shortTermMaxLufs()).isCloseTo(-38 + i, within(LOUDNESS_LU));
  }

  @ParameterizedTest
  @MethodSource("twenty")
  void case13_fourTenthsAnywhere_giveTheMomentaryMaximum(int i) {
    LoudnessReading reading =
        measure(segment(0.02 * i, SILENCE), segment(0.4, -23), segment(1, SILENCE));
    assertThat(reading.momentaryMaxLufs()).isCloseTo(-23, within(LOUDNESS_LU));
  }

  @ParameterizedTest
  @MethodSource("twenty")
  void case14_fourTenthsRisingInLevel_giveTheMomentaryMaximum(int i) {
    LoudnessReading reading =
        measure(
            segment(0.02 * i, SILENCE), segment(0.4, -38.0 + i), segment(0.4 - 0.02 * i, SILENCE));
    assertThat(reading.momentaryMaxLufs()).isCloseTo(-38 + i, within(LOUDNESS_LU));
  }

  @ParameterizedTest
  @CsvSource({
    "4, 0.50,  0,   -6",
    "4, 0.50, 45,   -6",
    "6, 0.50, 60,   -6",
    "8, 0.50, 67.5, -6",
    "4, 1.41, 45,    3"
  })
  void cases15To19_toneBetweenItsSamples_readsItsPeak(
      double division, double amplitude, double phaseDegrees, double expectedDbtp) {
    check(TestSignal.fadedTone(RATE.hertz(), division, amplitude, phaseDegrees, 1), expectedDbtp);
  }

  /** One period of 12 kHz at full scale within 8 kHz at half, made at 192 kHz and decimated. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void cases20To23_shortPeakBetweenSamples_readsFullScale(int offset) {
    double[] fast = new double[192_000];
    double phase = 0;
    for (int n = 0; n < fast.length; n++) {
      boolean isPeak = n >= 96_000 && n < 96_016;
      fast[n] = (isPeak ? 1 : 0.5) * Math.sin(phase);
      phase += 2 * Math.PI / (isPeak ? 16 : 24);
    }
    check(decimated(fast, offset), 0);
  }

  private static double[] decimated(double[] fast, int offset) {
    KaiserWindow window = KaiserWindow.ofAttenuation(80);
    int reach = 128;
    double[] slow = new double[fast.length / 4 - 2 * reach];
    for (int n = 0; n < slow.length; n++) {
      int centre = 4 * (n + reach) + offset;
      for (int k = -reach; k <= reach; k++) {
        double sinc = k == 0 ? 1 : Math.sin(Math.PI * k / 4) / (Math.PI * k / 4);
        slow[n] += fast[centre - k] * sinc / 4 * window.at(k / (double) reach);
      }
    }
    double fade = 480;
    for (int n = 0; n < fade; n++) {
      slow[n] *= n / fade;
      slow[slow.length - 1 - n] *= n / fade;
    }
    return slow;
  }

  private static void check(double[] samples, double expectedDbtp) {
    TruePeakMeter meter = TruePeakMeter.ofBoth(1);
    meter.process(new double[][] {samples}, 0, samples.length);
    TruePeakReading reading = meter.measure().get(0);
    assertThat(reading.annex2Dbtp())
        .isBetween(expectedDbtp - TRUE_PEAK_BELOW_DB, expectedDbtp + TRUE_PEAK_ABOVE_DB);
    assertThat(reading.fineDbtp())
        .isBetween(expectedDbtp - TRUE_PEAK_BELOW_DB, expectedDbtp + TRUE_PEAK_ABOVE_DB);
  }

  static Object[][] ranges() {
    return new Object[][] {
      {10, new double[] {-20, -30}},
      {5, new double[] {-20, -15}},
      {20, new double[] {-40, -20}},
      {15, new double[] {-50, -35, -20, -35, -50}}
    };
  }

  @ParameterizedTest
  @MethodSource("ranges")
  void rangeCases1To4_stepsOfTwentySeconds_readTheirRange(double expectedLu, double... levels) {
    Segment[] segments =
        Arrays.stream(levels).mapToObj(level -> segment(20, level)).toArray(Segment[]::new);
    assertThat(measure(segments).rangeLu()).isCloseTo(expectedLu, within(RANGE_LU));
  }

  private static Segment[] repeated(int times, Segment... segments) {
    return Collections.nCopies(times, segments).stream()
        .flatMap(Arrays::stream)
        .toArray(Segment[]::new);
  }

  private static LoudnessReading measure(Segment... segments) {
    double[][] signal = TestSignal.twice(tone(segments));
    LoudnessMeter meter = stereoMeter();
    meter.process(signal, 0, signal[0].length);
    return meter.measure();
  }

  private static double[] tone(Segment... segments) {
    return TestSignal.sine(RATE.hertz(), 1000, TestSignal.envelope(RATE.hertz(), segments));
  }

  private static LoudnessMeter stereoMeter() {
    return new LoudnessMeter(RATE, ChannelPosition.usual(2));
  }
}
