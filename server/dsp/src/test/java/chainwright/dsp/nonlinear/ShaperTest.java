package chainwright.dsp.nonlinear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ShaperTest {

  static Stream<Shaper> shapers() {
    return Stream.of(
        new TanhShaper(),
        new CubicShaper(),
        new ArctangentShaper(),
        new HardClipShaper(-3),
        new SoftClipShaper(-1, 4),
        new BiasedShaper(new TanhShaper(), 0.4),
        new BiasedShaper(new HardClipShaper(0), 0.3),
        new DrivenShaper(new ArctangentShaper(), 12),
        new DrivenShaper(new BiasedShaper(new SoftClipShaper(0, 6), -0.2), 3));
  }

  @ParameterizedTest
  @MethodSource("shapers")
  void shaper_overItsInput_isContinuousMonotoneAndHasItsSlope(Shaper shaper) {
    double h = 1e-6;
    for (double x = -3; x <= 3; x += 0.0101) {
      double at = x;
      double rise = (shaper.shape(at + h) - shaper.shape(at - h)) / (2 * h);
      assertThat(rise).as("slope at %s", at).isBetween(-1e-9, 1.3);
      boolean smooth = shaper.corners().stream().noneMatch(c -> Math.abs(c - at) < 2 * h);
      if (smooth) {
        assertThat(shaper.slope(at)).as("slope at %s", at).isCloseTo(rise, within(1e-6));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("shapers")
  void shaper_specialSamples_keepSilenceGainAndNan(Shaper shaper) {
    assertThat(shaper.shape(0)).isCloseTo(0, within(1e-16));
    assertThat(shaper.shape(Double.NaN)).isNaN();
    assertThat(shaper.shape(1e-7) / 1e-7).as("gain of a small signal").isCloseTo(1, within(1e-6));
    assertThat(shaper.shape(Double.POSITIVE_INFINITY)).isFinite();
    assertThat(shaper.shape(Double.NEGATIVE_INFINITY)).isFinite();
  }

  @ParameterizedTest
  @MethodSource("shapers")
  void process_anyBlock_equalsShape(Shaper shaper) {
    Random random = new Random(3);
    double[] input = random.doubles(200, -2, 2).toArray();
    double[] output = input.clone();
    shaper.process(output, 0, 77);
    shaper.process(output, 77, 100);
    for (int i = 0; i < 200; i++) {
      double expected = i < 177 ? shaper.shape(input[i]) : input[i];
      assertThat(output[i]).isEqualTo(expected);
    }
    assertThatExceptionOfType(IndexOutOfBoundsException.class)
        .isThrownBy(() -> shaper.process(output, 150, 51));
  }

  @ParameterizedTest
  @CsvSource({"0, 6", "-1, 2", "-6, 12", "-0.3, 0.1"})
  void softClip_anyInput_staysBelowItsCeilingAndSmooth(double ceiling, double knee) {
    SoftClipShaper shaper = new SoftClipShaper(ceiling, knee);
    double limit = Math.pow(10, ceiling / 20);
    for (double x = 0; x < 4; x += 0.001) {
      assertThat(shaper.shape(x)).isLessThanOrEqualTo(limit);
      assertThat(shaper.shape(-x)).isEqualTo(-shaper.shape(x));
    }
    for (double corner : shaper.corners()) {
      assertThat(shaper.slope(corner * (1 - 1e-9)))
          .as("C1 at %s", corner)
          .isCloseTo(shaper.slope(corner * (1 + 1e-9)), within(1e-6));
    }
    // At the ceiling itself: half the knee in, so knee/8 of reduction.
    assertThat(20 * Math.log10(shaper.shape(limit))).isCloseTo(ceiling - knee / 8, within(1e-9));
  }

  static Stream<Arguments> wantedDistortions() {
    Stream.Builder<Arguments> cases = Stream.builder();
    for (double thd : new double[] {0.0005, 0.003, 0.03, 0.2}) {
      for (Shaper shaper :
          new Shaper[] {
            new TanhShaper(),
            new ArctangentShaper(),
            new CubicShaper(),
            new HardClipShaper(0),
            new SoftClipShaper(0, 6),
            new BiasedShaper(new TanhShaper(), 0.3)
          }) {
        cases.add(Arguments.of(shaper, thd));
      }
    }
    return cases.build();
  }

  @ParameterizedTest
  @MethodSource("wantedDistortions")
  void driven_wantedThdAtAlignment_hasIt(Shaper base, double thdShare) {
    DrivenShaper shaper = DrivenShaper.ofThd(base, -18, thdShare);
    assertThat(Harmonics.analyze(shaper, -18).thdShare())
        .isCloseTo(thdShare, within(1e-8 * thdShare + 1e-12));
  }

  static Stream<Arguments> wrongSettings() {
    TanhShaper tanh = new TanhShaper();
    return Stream.of(
        wrong(() -> new HardClipShaper(Double.NaN), "the ceiling must be finite"),
        wrong(() -> new SoftClipShaper(0, 0), "the knee width must be finite and above 0 dB"),
        wrong(() -> new BiasedShaper(new HardClipShaper(0), 2), "where the shaper rises"),
        wrong(() -> new DrivenShaper(tanh, Double.POSITIVE_INFINITY), "drive must be finite"),
        wrong(() -> new QuadraticShaper(Double.NaN), "must be finite"),
        wrong(() -> DrivenShaper.ofThd(tanh, -18, 0.6), "must be one the shaper can reach"),
        wrong(() -> DrivenShaper.ofThd(tanh, -18, 0), "the THD must be above 0"));
  }

  private static Arguments wrong(ThrowingCallable make, String message) {
    return Arguments.of(make, message);
  }

  @ParameterizedTest
  @MethodSource("wrongSettings")
  void shaper_wrongSetting_throws(ThrowingCallable make, String message) {
    assertThatIllegalArgumentException().isThrownBy(make).withMessageContaining(message);
  }

  /** Source: {@link StrictMath#tanh}, itself specified to 2.5 units in the last place. */
  @Test
  void tanh_overItsRange_isTheHyperbolicTangentToTheLastBits() {
    Random random = new Random(4);
    TanhShaper shaper = new TanhShaper();
    for (int i = 0; i < 200_000; i++) {
      double x = 25 * Math.pow(random.nextDouble(), 4) * (i % 2 == 0 ? 1 : -1);
      double expected = StrictMath.tanh(x);
      assertThat(shaper.shape(x))
          .as("tanh %s", x)
          .isCloseTo(expected, within(2e-15 * Math.abs(expected)));
    }
    assertThat(shaper.shape(1e-300)).isCloseTo(1e-300, within(2e-315));
    assertThat(shaper.shape(-0.0)).isEqualTo(-0.0);
    assertThat(shaper.shape(Double.NaN)).isNaN();
    assertThat(shaper.shape(Double.NEGATIVE_INFINITY)).isCloseTo(-1, within(2e-15));
  }

  @Test
  void hardClip_sampleAtItsCeiling_isUnchanged() {
    assertThat(new HardClipShaper(0).shape(1)).isEqualTo(1);
    assertThat(new HardClipShaper(-6).shape(-1)).isCloseTo(-Math.pow(10, -0.3), within(1e-15));
  }
}
