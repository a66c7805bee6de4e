package chainwright.dsp.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import chainwright.quantity.Bandwidth;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;
import chainwright.quantity.TimeSpan;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws that responses obey, whatever they are of. */
class ResponseTest {

  private static final double ROUNDING = 1e-9;

  /** What a difference of phases a hundred-thousandth of the frequency apart can tell. */
  private static final double DIFFERENCE_RELATIVE = 1e-5;

  private static final AnaloguePrototype BELL =
      EqualiserPrototypes.bell(hertz(700), new Decibels(7), new QualityFactor(2));
  private static final AnaloguePrototype HIGH_PASS =
      PassPrototypes.highPass(PassFamily.BUTTERWORTH, 3, hertz(120));
  private static final AnaloguePrototype NOTCH =
      EqualiserPrototypes.notch(hertz(1000), new QualityFactor(4));
  private static final Response LATE = new PureDelay(new TimeSpan(0.0007));

  static Stream<Arguments> responses() {
    return Stream.of(
        Arguments.of("prototype", BELL),
        Arguments.of("prototype with nulls", new ResponseProduct(List.of(HIGH_PASS, NOTCH))),
        Arguments.of("analogue curve", digital(Curve.ANALOGUE, BELL)),
        Arguments.of(
            "cascade with delay and polarity",
            new FilterCascade(
                SampleRate.DEFAULT, digital(Curve.BILINEAR, HIGH_PASS).sections(), -0.7, 17.25)),
        Arguments.of(
            "all-pass stages",
            digital(
                Curve.ANALOGUE,
                CorrectiveFilters.repeat(
                    EqualiserPrototypes.allPass(hertz(300), new QualityFactor(1.2)), 3))),
        Arguments.of("pure delay", LATE),
        Arguments.of(
            "comb of two paths",
            new SumOfPaths(
                List.of(
                    new ConstantFactor(1),
                    new ResponseProduct(List.of(BELL, LATE, new ConstantFactor(0.6)))))));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("responses")
  void groupDelay_besideDifferencesOfPhase_agrees(String name, Response response) {
    double[] grid = FrequencyGrid.logarithmic(15, 20_000, 200).toHertz();
    double[] delay = response.toGroupDelay(grid);
    for (int i = 0; i < grid.length; i++) {
      double step = grid[i] * 1e-5;
      double[] phase = response.toPhase(new double[] {grid[i] - step, grid[i] + step});
      double difference = -(phase[1] - phase[0]) / (2 * Math.PI * 2 * step);
      assertThat(delay[i])
          .as("%s at %s Hz", name, grid[i])
          .isCloseTo(difference, within(DIFFERENCE_RELATIVE * (Math.abs(difference) + 1e-4)));
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("responses")
  void phase_wrappedToOneTurn_isThatOfTheFactor(String name, Response response) {
    double[] grid = FrequencyGrid.logarithmic(15, 20_000, 500).toHertz();
    double[] wrapped = response.toWrappedPhase(grid);
    double[] continuous = response.toPhase(grid);
    for (int i = 0; i < grid.length; i++) {
      assertThat(Math.IEEEremainder(wrapped[i] - continuous[i], 2 * Math.PI))
          .as("%s at %s Hz", name, grid[i])
          .isCloseTo(0, within(ROUNDING));
      if (i > 0 && grid[i - 1] < 990 && grid[i] < 990) {
        assertThat(Math.abs(continuous[i] - continuous[i - 1])).as(name).isLessThan(Math.PI / 2);
      }
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("responses")
  void product_ofTwo_addsDecibelsAndPhasesAndDelays(String name, Response response) {
    double[] grid = FrequencyGrid.audible(SampleRate.DEFAULT, 50).toHertz();
    Response product = new ResponseProduct(List.of(response, NOTCH));
    check(name, product.toDecibels(grid), response.toDecibels(grid), NOTCH.toDecibels(grid));
    check(name, product.toPhase(grid), response.toPhase(grid), NOTCH.toPhase(grid));
    check(name, product.toGroupDelay(grid), response.toGroupDelay(grid), NOTCH.toGroupDelay(grid));
  }

  @Test
  void sum_ofAPathAndItsOpposite_isSilent() {
    Response sum =
        new SumOfPaths(List.of(BELL, new ResponseProduct(List.of(BELL, new ConstantFactor(-1)))));
    assertThat(sum.toDecibels(new double[] {30, 700, 9000})).containsOnly(Double.NEGATIVE_INFINITY);
  }

  /** First notch of a comb at half the inverse of the delay, by definition. */
  @Test
  void sum_ofASignalAndItsDelayedCopy_isAComb() {
    double delaySeconds = 0.001;
    Response comb =
        new SumOfPaths(List.of(new ConstantFactor(1), new PureDelay(new TimeSpan(delaySeconds))));
    assertThat(comb.decibelsAt(500)).isLessThan(-250);
    assertThat(comb.decibelsAt(1000)).isCloseTo(20 * Math.log10(2), within(ROUNDING));
    assertThat(comb.toGroupDelay(new double[] {321})[0]).isCloseTo(delaySeconds / 2, within(1e-12));
  }

  @Test
  void sum_ofNoPath_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SumOfPaths(List.of()))
        .withMessage("a sum must have at least one path");
  }

  @Test
  void notch_atItsCentre_isANullWithTheDelayOfItsNeighbourhood() {
    FilterCascade notch = digital(Curve.BILINEAR, NOTCH);
    assertThat(NOTCH.decibelsAt(1000)).isEqualTo(Double.NEGATIVE_INFINITY);
    double[] near = notch.toGroupDelay(new double[] {999.999, 1000, 1000.001});
    assertThat(near[1]).isCloseTo(near[0], within(1e-8)).isCloseTo(near[2], within(1e-8));
    double[] offset = {0, 0.001};
    double[] delay = CorrectiveFilters.offsetRemoval(hertz(3)).toGroupDelay(offset);
    assertThat(delay[0]).isCloseTo(delay[1], within(1e-6));
  }

  @Test
  void midSide_withOneResponse_leavesTheOtherChannelAlone() {
    MidSideResponse stage = MidSideResponse.ofBoth(BELL);
    assertThat(stage.toOtherChannel().decibelsAt(700)).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(stage.toSameChannel().decibelsAt(700)).isCloseTo(7, within(ROUNDING));
  }

  /** A side 6.02 dB down leaves 0.75 in the channel and puts 0.25 into the other, by definition. */
  @Test
  void midSide_withQuieterSide_spreadsChannels() {
    MidSideResponse stage =
        MidSideResponse.ofBoth(new ConstantFactor(1))
            .then(new MidSideResponse(new ConstantFactor(1), new ConstantFactor(0.5)));
    assertThat(stage.toSameChannel().decibelsAt(50))
        .isCloseTo(20 * Math.log10(0.75), within(ROUNDING));
    assertThat(stage.toOtherChannel().decibelsAt(50))
        .isCloseTo(20 * Math.log10(0.25), within(ROUNDING));
  }

  /** Source: Audio EQ Cookbook: half the gain [dB] where the edges lie a bandwidth apart. */
  @ParameterizedTest
  @CsvSource({"0.5", "1", "2"})
  void bell_ofAWidthInOctaves_hasHalfItsGainAtTheEdges(double octaves) {
    AnaloguePrototype bell =
        EqualiserPrototypes.bell(
            hertz(1000), new Decibels(-8), QualityFactor.ofBandwidth(new Bandwidth(octaves)));
    assertThat(bell.decibelsAt(1000 * Math.pow(2, octaves / 2))).isCloseTo(-4, within(ROUNDING));
    assertThat(bell.decibelsAt(1000 * Math.pow(2, -octaves / 2))).isCloseTo(-4, within(ROUNDING));
    assertThat(QualityFactor.ofBandwidth(new Bandwidth(octaves)).toBandwidth())
        .satisfies(width -> assertThat(width.octaves()).isCloseTo(octaves, within(ROUNDING)));
  }

  @Test
  void shelfQuality_steeperThanAnyFilter_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> EqualiserPrototypes.shelfQuality(9, new Decibels(12)))
        .withMessageStartingWith("the steepness of a shelf of +12 dB must lie between 0 and ");
    assertThat(EqualiserPrototypes.shelfQuality(1, new Decibels(-5)).value())
        .isCloseTo(Math.sqrt(0.5), within(ROUNDING));
  }

  @Test
  void humRemoval_ofSixHarmonicsAtALowRate_leavesOutThoseAboveNyquist() {
    Frequency nyquist = SampleRate.ofHertz(8000).nyquist();
    AnaloguePrototype hum = CorrectiveFilters.humRemoval(hertz(900), 6, hertz(2), nyquist);
    assertThat(hum.sections()).hasSize(4);
    assertThat(hum.decibelsAt(2700)).isEqualTo(Double.NEGATIVE_INFINITY);
    AnaloguePrototype gentle =
        CorrectiveFilters.humRemoval(hertz(50), 3, hertz(2), new Decibels(-30), nyquist);
    assertThat(gentle.decibelsAt(100)).isCloseTo(-30, within(0.01));
  }

  @Test
  void cascade_ofGainAndPolarityAndDelay_isExact() {
    FilterCascade cascade =
        FilterCascade.ofGain(SampleRate.DEFAULT, new Decibels(-6))
            .then(FilterCascade.ofInvertedPolarity(SampleRate.DEFAULT))
            .then(FilterCascade.ofDelay(SampleRate.DEFAULT, new TimeSpan(0.00251)));
    assertThat(cascade.delaySamples()).isCloseTo(120.48, within(ROUNDING));
    assertThat(cascade.decibelsAt(5000)).isCloseTo(-6, within(ROUNDING));
    assertThat(cascade.toPhase(new double[] {100})[0])
        .isCloseTo(Math.PI - 2 * Math.PI * 0.251, within(ROUNDING));
    assertThat(cascade.toGroupDelay(new double[] {100})[0]).isCloseTo(0.00251, within(1e-15));
  }

  private static void check(String name, double[] product, double[] one, double[] other) {
    for (int i = 0; i < product.length; i++) {
      assertThat(product[i]).as(name).isCloseTo(one[i] + other[i], within(ROUNDING));
    }
  }

  private static FilterCascade digital(Curve curve, AnaloguePrototype prototype) {
    return curve.design(prototype, SampleRate.DEFAULT);
  }

  private static Frequency hertz(double hertz) {
    return Frequency.ofHertz(hertz);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("responses")
  void boundDecibels_ofAnyResponse_isNowhereExceeded(String name, Response response) {
    double[] hertz = FrequencyGrid.audible(SampleRate.DEFAULT, 2000).toHertz();
    for (double decibels : response.toDecibels(hertz)) {
      assertThat(decibels).isLessThanOrEqualTo(response.boundDecibels() + ROUNDING);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "20, 5, 12, 192000",
    "20, 0.5, -12, 48000",
    "700, 2, 7, 48000",
    "3100, 2.2, -2.5, 48000",
    "18000, 10, 18, 48000",
    "12000, 0.7071, 2, 96000",
    "9000, 3, 0, 44100"
  })
  void boundDecibels_ofOneSection_isItsPeak(double centre, double q, double gainDb, double rateHz) {
    SampleRate rate = new SampleRate(rateHz);
    Decibels gain = new Decibels(gainDb);
    QualityFactor quality = new QualityFactor(q);
    for (AnaloguePrototype prototype :
        List.of(
            EqualiserPrototypes.bell(hertz(centre), gain, quality),
            EqualiserPrototypes.lowShelf(hertz(centre), gain, quality),
            EqualiserPrototypes.highShelf(hertz(centre), gain, quality),
            EqualiserPrototypes.lowPass(hertz(centre), quality),
            EqualiserPrototypes.highPass(hertz(centre), quality))) {
      FilterCascade filter = Curve.ANALOGUE.design(prototype, rate);
      double half = rate.nyquist().hertz();
      double peakDb =
          Math.max(ResponseSearch.findHighest(filter, 1e-3, half).decibels(), filter.decibelsAt(0));
      assertThat(filter.boundDecibels()).isCloseTo(peakDb, within(1e-6));
    }
  }
}
