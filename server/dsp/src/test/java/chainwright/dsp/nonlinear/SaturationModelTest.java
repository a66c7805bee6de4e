package chainwright.dsp.nonlinear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SaturationModelTest {

  private static final double ALIGNMENT = SaturationModel.ALIGNMENT_LEVEL_DBFS;

  static Stream<SaturationSettings> undriven() {
    Stream.Builder<SaturationSettings> all = Stream.builder();
    for (double thd : new double[] {0.0005, 0.003, 0.015, 0.1}) {
      all.add(new TapeSaturation(0, thd, 8000, 0.5));
      all.add(new TapeSaturation(0, thd, 4000, 3));
      all.add(new TransformerSaturation(0, thd, 60, 0));
      all.add(new TransformerSaturation(0, thd, 400, 0.3));
      all.add(new ValveSaturation(0, thd, 0.3));
      all.add(new ValveSaturation(0, thd, 0));
    }
    return all.build();
  }

  @ParameterizedTest
  @MethodSource("undriven")
  void model_withoutDrive_hasItsThdAtAlignment(SaturationSettings settings) {
    double thd = settings.thdAtAlignmentShare();
    assertThat(settings.design().thdShare(1000, ALIGNMENT)).isCloseTo(thd, within(1e-8 * thd));
  }

  @ParameterizedTest
  @MethodSource("undriven")
  void model_smallSignal_passesWithItsResponseOnly(SaturationSettings settings) {
    SaturationModel model = settings.design();
    for (double frequency : new double[] {30, 60, 1000, 15000}) {
      Harmonics harmonics = model.harmonics(frequency, -120, 3);
      assertThat(harmonics.levelDbfs(1) + 120)
          .isCloseTo(model.smallSignalGainDb(frequency), within(1e-6));
    }
  }

  @Test
  void drive_sixDecibels_distortsAsSixDecibelsMoreLevel() {
    SaturationModel plain = new TapeSaturation(0, 0.003, 8000, 1).design();
    SaturationModel driven = new TapeSaturation(6, 0.003, 8000, 1).design();
    assertThat(driven.thdShare(400, -24)).isCloseTo(plain.thdShare(400, -18), within(1e-12));
  }

  @Test
  void tape_lowLevels_thirdHarmonicGrowsWithTheSquareOfLevel() {
    SaturationModel tape = new TapeSaturation(0, 0.003, 8000, 0).design();
    double ratio = tape.thdShare(1000, -34) / tape.thdShare(1000, -40);
    assertThat(ratio).isCloseTo(Math.pow(10, 2 * 6 / 20.0), within(0.01));
    assertThat(tape.harmonics(1000, -18, 4).amplitude(2)).isLessThan(1e-15);
  }

  @Test
  void tape_highs_reachTheShaperLouder() {
    SaturationModel tape = new TapeSaturation(0, 0.003, 8000, 0).design();
    // |1 + j| / |1 + j/4| at the treble saturation frequency.
    assertThat(tape.emphasisDb(8000))
        .isCloseTo(20 * Math.log10(Math.sqrt(2 / (1 + 1 / 16.0))), within(1e-9));
    double lowLoss = -100 - tape.harmonics(100, 0, 1).levelDbfs(1) + 100;
    double highLoss = -100 - tape.harmonics(12000, 0, 1).levelDbfs(1) + 100;
    assertThat(highLoss).as("compression of highs").isGreaterThan(lowLoss + 0.05);
  }

  @Test
  void tape_headBump_isItsGainAtItsCentre() {
    SaturationModel tape = new TapeSaturation(0, 0.003, 8000, 1.5).design();
    assertThat(tape.smallSignalGainDb(TapeSaturation.HEAD_BUMP_HZ)).isCloseTo(1.5, within(1e-9));
    assertThat(tape.smallSignalGainDb(5000)).isCloseTo(0, within(0.01));
  }

  @ParameterizedTest
  @CsvSource({"10", "25", "60", "150", "400"})
  void transformer_lowCutoff_distortsThreeTimesAsMuchAsAt1Kilohertz(double cutoffHz) {
    SaturationModel transformer = new TransformerSaturation(0, 0.003, cutoffHz, 0).design();
    double ratio = transformer.thdShare(cutoffHz, -50) / transformer.thdShare(1000, -50);
    assertThat(ratio).as("at a low level").isCloseTo(3, within(0.01));
    // At alignment the curve has begun to bend; 0.3 % against 0.9 % is still nearly in proportion.
    assertThat(transformer.thdShare(cutoffHz, ALIGNMENT)).isCloseTo(0.009, within(0.0005));
  }

  @Test
  void transformer_overFrequency_distortsLessAndLess() {
    SaturationModel transformer = new TransformerSaturation(3, 0.003, 60, 0.2).design();
    double before = Double.POSITIVE_INFINITY;
    for (double frequency = 20; frequency < 20000; frequency *= 1.5) {
      double thd = transformer.thdShare(frequency, ALIGNMENT);
      assertThat(thd).as("at %s Hz", frequency).isLessThan(before);
      before = thd;
    }
  }

  @Test
  void valve_asymmetric_leadsWithTheSecondHarmonic() {
    Harmonics harmonics = new ValveSaturation(3, 0.003, 0.3).design().harmonics(1000, ALIGNMENT, 5);
    assertThat(harmonics.amplitude(2)).isGreaterThan(5 * harmonics.amplitude(3));
    assertThat(harmonics.amplitude(3)).isGreaterThan(harmonics.amplitude(4));
    assertThat(harmonics.dcOffset()).isZero();
  }

  @Test
  void valve_moreAsymmetry_hasMoreEvenAgainstOddHarmonics() {
    double before = -1;
    for (double asymmetry = 0; asymmetry < 0.95; asymmetry += 0.1) {
      Harmonics harmonics =
          new ValveSaturation(0, 0.01, asymmetry).design().harmonics(1000, ALIGNMENT, 3);
      double ratio = harmonics.amplitude(2) / harmonics.amplitude(3);
      assertThat(ratio).isGreaterThan(before);
      before = ratio;
    }
  }

  @Test
  void valve_fullAsymmetry_hasNoThirdHarmonicAtLowLevels() {
    Harmonics harmonics = new ValveSaturation(0, 0.003, 1).design().harmonics(1000, -40, 3);
    assertThat(harmonics.amplitude(3)).isLessThan(1e-5 * harmonics.amplitude(2));
  }

  static Stream<Arguments> wrongSettings() {
    return Stream.of(
        wrong(() -> new TapeSaturation(0, 0, 8000, 0), "THD at alignment must lie between 0"),
        wrong(() -> new TapeSaturation(0, 0.5, 8000, 0), "50 %, but was 50"),
        wrong(() -> new TapeSaturation(0, 0.01, 0, 0), "treble saturation must be finite"),
        wrong(() -> new TapeSaturation(Double.NaN, 0.01, 9000, 0), "drive must be finite"),
        wrong(() -> new TapeSaturation(0, 0.01, 9000, Double.NaN), "head-bump must be finite"),
        wrong(() -> new TransformerSaturation(0, 0.01, 5, 0), "10 Hz and 400 Hz, but was 5"),
        wrong(
            () -> new TransformerSaturation(0, 0.01, 50, 2), "asymmetry must lie between 0 and 1"),
        wrong(() -> new ValveSaturation(0, 0.01, -0.1), "asymmetry must lie between 0 and 1"),
        wrong(
            () -> new ValveSaturation(0, 0.01, 0.1).design().harmonics(0, -18, 2),
            "frequency must be finite and above 0 Hz"));
  }

  private static Arguments wrong(ThrowingCallable make, String message) {
    return Arguments.of(make, message);
  }

  @ParameterizedTest
  @MethodSource("wrongSettings")
  void settings_outsideTheirRange_throw(ThrowingCallable make, String message) {
    assertThatIllegalArgumentException().isThrownBy(make).withMessageContaining(message);
  }
}
