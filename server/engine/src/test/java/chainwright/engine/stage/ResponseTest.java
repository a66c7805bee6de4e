package chainwright.engine.stage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.engine.WrittenChain;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What chains written as text do to single frequencies, at 48 kHz. */
class ResponseTest {

  /** The digital curves follow the analogue filters that closely at these frequencies. */
  private static final double CURVE_DB = 0.02;

  /** Away from the corner low-pass and band-pass deviate more, by up to 0.12 dB here. */
  private static final double SLOPE_DB = 0.15;

  private static final double CURVE_RADIANS = 0.01;

  /** Sums and products of constants are exact to rounding. */
  private static final double ROUNDING_DB = 1e-9;

  /**
   * Source of butterworth: Butterworth 1930, {@code -10 log10(1 + (f/fc)^2n)}; of linkwitz-riley:
   * Linkwitz and Riley 1976, half the voltage; of Q: Audio EQ Cookbook, {@code 20 log10 Q}; of
   * bessel, 12 dB/oct by phase: Thomson's {@code s^2 + 3s + 3} scaled to {@code s^2 + 1.732s + 1}.
   */
  @ParameterizedTest
  @CsvSource({
    "high-pass 80 Hz 24 dB/oct, 80, -3.0103",
    "high-pass 80 Hz 24 dB/oct, 40, -24.0993",
    "high-pass 80 Hz 6 dB/oct, 8, -20.0432",
    "low-pass 1 kHz, 1000, -3.0103",
    "low-pass 1 kHz 48 dB/oct curve bilinear, 1000, -3.0103",
    "high-pass 100 Hz 24 dB/oct family linkwitz-riley, 100, -6.0206",
    "low-pass 100 Hz family linkwitz-riley, 100, -6.0206",
    "low-pass 1 kHz family bessel, 1000, -3.0103",
    "low-pass 1 kHz family bessel normalised phase, 1000, -4.7712",
    "low-pass 1 kHz 12 dB/oct Q 2, 1000, 6.0206",
    "high-pass 1 kHz Q 0.5, 1000, -6.0206",
    "low-pass 1 kHz 24 dB/oct Q 2, 1000, -3.0103",
    "low-pass 1 kHz family linkwitz-riley Q 2, 1000, -6.0206",
  })
  void passFilter_atAFrequency_attenuates(String line, double hertz, double expectedDb) {
    check(line, hertz, expectedDb, CURVE_DB);
  }

  /**
   * Source: Audio EQ Cookbook: the gain at the centre, half of it [dB] where bells of Q 1 have
   * {@code f/fc = 1.618} and at the midpoint of shelves, -3 dB of Q 2 at {@code f/fc = 1.2808}; the
   * tilt from {@code (A s + 1) / (s + A)}; depth and offset removal from their definitions.
   */
  @ParameterizedTest
  @CsvSource({
    "bell 3.1 kHz -2.5 dB Q 2.2, 3100, -2.5",
    "bell 1 kHz +6 dB Q 1, 1618.034, 3",
    "bell 1 kHz +6 dB, 618.034, 3",
    "bell 1 kHz 0 dB, 1000, 0",
    "low-shelf 200 Hz +4 dB, 200, 2",
    "low-shelf 200 Hz +4 dB, 1, 4",
    "high-shelf 5 kHz -6 dB, 5000, -3",
    "high-shelf 5 kHz -6 dB, 10, 0",
    "low-shelf 200 Hz +4 dB slope 0.5, 200, 2",
    "high-shelf 5 kHz -6 dB slope 0.3, 5000, -3",
    "tilt +4 dB, 800, 0",
    "tilt +4 dB, 80, -1.9590",
    "tilt 800 Hz +4 dB, 8000, 1.9590",
    "band-pass 1 kHz Q 2, 1000, 0",
    "notch 1 kHz Q 2, 1280.776, -3.0103",
    "notch 1 kHz -20 dB, 1000, -20",
    "all-pass 150 Hz, 150, 0",
    "all-pass 150 Hz second-order sections 3, 400, 0",
    "hum-removal 50 Hz, 50, -24",
    "hum-removal 50 Hz, 300, -24",
    "hum-removal 50 Hz, 350, 0",
    "dc-offset-removal, 3, -3.0103",
    "saturation valve, 2, -3.0103",
    "saturation valve, 100, 0",
    "saturation asymmetric asymmetry 0 %, 2, 0",
  })
  void equaliser_atAFrequency_hasItsGain(String line, double hertz, double expectedDb) {
    check(line, hertz, expectedDb, CURVE_DB);
  }

  /** Source: as above, an octave above a Butterworth low-pass and where a band-pass has -3 dB. */
  @ParameterizedTest
  @CsvSource({
    "low-pass 1 kHz, 2000, -12.3045",
    "low-pass 1 kHz 24 dB/oct, 2000, -24.0993",
    "band-pass 1 kHz Q 2, 1280.776, -3.0103",
    "band-pass 1 kHz Q 2, 780.776, -3.0103",
  })
  void filter_onItsSlope_followsTheAnalogueOne(String line, double hertz, double expectedDb) {
    check(line, hertz, expectedDb, SLOPE_DB);
  }

  /** Source: {@code 20 log10} of the factors; a blend of a half is {@code (1 + g) / 2}. */
  @ParameterizedTest
  @CsvSource({
    "gain -6 dB, -6",
    "polarity inverted, 0",
    "delay 12 ms, 0",
    "align -3 ms, 0",
    "ride 0:01 to 0:02 -6 dB, 0",
    "pan 30 %, 0",
    "width side-gain 6 dB, 0",
    "compressor threshold -20 dBFS, 0",
    "compressor threshold -20 dBFS make-up 3 dB, 3",
    "compressor threshold -20 dBFS make-up 3 dB blend 50 %, 1.6289",
    "compressor threshold -20 dBFS make-up 3 dB blend 0 %, 0",
    "gate threshold -40 dBFS, 0",
    "dynamic-bell 1 kHz threshold -30 dBFS, 0",
    "saturation valve asymmetry 0 % bias-shift 0 ms, 0",
    "clipper ceiling -1 dBFS, 0",
    "reverb, 0",
  })
  void stageAtRest_atAnyFrequency_hasItsFixedGain(String line, double expectedDb) {
    check(line, 100, expectedDb, 0.0001);
    check(line, 10_000, expectedDb, 0.0001);
  }

  /** Source: the bell of the Audio EQ Cookbook at 60 Hz; a blend of a half is {@code (1 + g)/2}. */
  @ParameterizedTest
  @CsvSource({
    "saturation tape head-bump 2 dB, 2",
    "saturation tape head-bump 2 dB blend 50 %, 1.0574",
    "saturation tape head-bump 2 dB thd-at-alignment 0 %, 2",
    "saturation tape head-bump 0 dB, 0",
  })
  void tape_atItsHeadBump_isLifted(String line, double expectedDb) {
    check(line, 60, expectedDb, CURVE_DB);
  }

  @Test
  void notch_withoutDepth_leavesNothingAtItsCentre() {
    assertThat(WrittenChain.pathOf("notch 1 kHz").response().decibelsAt(1000)).isLessThan(-120);
  }

  /** Source: {@code -2 pi f T}; all-passes by the Audio EQ Cookbook and {@code (1-s)/(1+s)}. */
  @ParameterizedTest
  @CsvSource({
    "all-pass 150 Hz, 150, -1.5708",
    "all-pass 150 Hz second-order, 150, -3.1416",
    "all-pass 150 Hz first-order sections 2, 150, -3.1416",
    "delay 1 ms, 250, -1.5708",
    "align -1 ms, 250, 1.5708",
    "polarity inverted, 250, 3.1416",
    "polarity as-recorded, 250, 0",
  })
  void timeStage_atAFrequency_turnsThePhase(String line, double hertz, double expectedRadians) {
    assertThat(WrittenChain.pathOf(line).response().toPhase(new double[] {hertz})[0])
        .as(line)
        .isCloseTo(expectedRadians, within(CURVE_RADIANS));
  }

  @Test
  void cutAndBoost_ofTheSameSize_cancel() {
    for (double hertz : new double[] {50, 900, 1000, 3000, 15_000}) {
      check("bell 1 kHz -6 dB Q 2\nbell 1 kHz +6 dB Q 2", hertz, 0, 1e-6);
      check("low-shelf 300 Hz -4 dB\nlow-shelf 300 Hz +4 dB", hertz, 0, 1e-6);
    }
  }

  /** Source: equal voltages add up to {@code 20 log10 2}; -10 dB beside it, 20 log10(1.3162). */
  @ParameterizedTest
  @CsvSource({
    "path \"wet\", 6.0206",
    "path \"wet\" -10 dB, 2.3866",
    "path \"wet\" { gain -10 dB }, 2.3866",
    "path \"wet\" { compressor threshold -30 dBFS }, 6.0206",
  })
  void parallel_ofDryAndAPath_addsUp(String path, double expectedDb) {
    check("parallel {\npath \"dry\"\n" + path + "\n}", 1000, expectedDb, 0.0001);
  }

  @Test
  void parallel_withPolarityInverted_cancels() {
    String text = "parallel {\npath \"dry\"\npath \"upside down\" { polarity inverted }\n}";
    assertThat(WrittenChain.pathOf(text).response().decibelsAt(1000)).isLessThan(-200);
  }

  /** Source: Linkwitz and Riley 1976: the halves add up to an all-pass. */
  @ParameterizedTest
  @CsvSource({"''", "12 dB/oct", "24 dB/oct", "48 dB/oct"})
  void multiband_atRest_sumsFlat(String slope) {
    String text =
        "multiband "
            + slope
            + " {\nband below 200 Hz { compressor threshold -30 dBFS }\nband 200 Hz to 3 kHz { bell 1 kHz 0"
            + " dB }\nband above 3 kHz\n}";
    for (double hertz : new double[] {20, 100, 200, 500, 1000, 3000, 8000, 20_000}) {
      check(text, hertz, 0, 1e-6);
    }
  }

  @Test
  void multiband_withAGainInOneBand_raisesThatBand() {
    String text =
        "multiband {\nband below 200 Hz { gain 6 dB }\nband 200 Hz to 3 kHz\nband above 3 kHz\n}";
    check(text, 20, 6, 0.01);
    check(text, 10_000, 0, 0.01);
  }

  @Test
  void midSide_ofBoth_hasTheResponseOfTheMiddle() {
    check("mid-side {\nmid { gain -2 dB }\nside { gain 5 dB }\n}", 1000, -2, ROUNDING_DB);
  }

  /**
   * Source: Audio EQ Cookbook: at a given gain the slope in dB/oct is proportional to S, and S 1 is
   * Q 0.7071.
   */
  @ParameterizedTest
  @CsvSource({"low-shelf 400 Hz +6 dB", "low-shelf 400 Hz -9 dB", "high-shelf 400 Hz +12 dB"})
  void shelf_writtenByItsSlope_isThatSteep(String shelf) {
    double steepest = decibelsPerOctave(shelf + " slope 1");
    assertThat(decibelsPerOctave(shelf + " Q 0.70710678")).isCloseTo(steepest, within(1e-6));
    for (double slope : new double[] {0.9, 0.5, 0.25}) {
      assertThat(decibelsPerOctave(shelf + " slope " + slope))
          .as("%s slope %s", shelf, slope)
          .isCloseTo(slope * steepest, within(1e-3 * Math.abs(steepest)));
    }
  }

  private static double decibelsPerOctave(String shelf) {
    double step = Math.pow(2, 0.01);
    var response = WrittenChain.soundOf(shelf + " curve bilinear").response();
    return (response.decibelsAt(400 * step) - response.decibelsAt(400 / step)) / 0.02;
  }

  /** Source: 343 m/s in air; a sample is the inverse of the rate. */
  @ParameterizedTest
  @CsvSource({
    "delay 48 samples, 1",
    "delay 0.343 m, 1",
    "delay 2 ms, 2",
    "align 96 samples, 2",
    "align 0.686 m, 2"
  })
  void delay_writtenInAnyUnit_isThatLate(String line, double milliseconds) {
    double[] delays = WrittenChain.soundOf(line).response().toGroupDelay(new double[] {1000});
    assertThat(1000 * delays[0]).isCloseTo(milliseconds, within(1e-9));
  }

  private static void check(String lines, double hertz, double expectedDb, double toleranceDb) {
    assertThat(WrittenChain.pathOf(lines).response().decibelsAt(hertz))
        .as("%s at %s Hz", lines, hertz)
        .isCloseTo(expectedDb, within(toleranceDb));
  }
}
