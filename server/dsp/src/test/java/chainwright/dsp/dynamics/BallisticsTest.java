package chainwright.dsp.dynamics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.dynamics.StepResponse.Step;
import chainwright.dsp.reference.ReferenceTable;
import chainwright.dsp.reference.ReferenceTable.Row;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class BallisticsTest {

  private static final double TOLERANCE_DB = 1e-9;

  private static final double MINUS_63_PERCENT = Math.exp(-1);

  @ParameterizedTest
  @EnumSource(Smoothing.class)
  void stepResponse_referenceTable_agrees(Smoothing smoothing) {
    String column = smoothing == Smoothing.BRANCHING ? "branching_smooth" : "decoupled_smooth";
    // 0 dB into ∞:1 at −12 dB asks for the 12 dB of the reference, −24 dB for none.
    OverThresholdCurve curve = new LimiterCurve(-12, 0);
    List<Row> rows = ReferenceTable.read(BallisticsTest.class, "detector_step.csv");
    for (Row row : rows) {
      CompressorDesign design =
          new CompressorDesign(
              curve,
              new Detector.Peak(),
              new SmoothedBallistics(
                  row.number("attack_tau_s"), row.number("release_tau_s"), smoothing));
      // One response a row would be slow; rows of one setting follow each other.
      StepResponse response = response(design, row.number("fs"));
      int n = (int) row.number("n");
      assertThat(-response.gainDb(n))
          .as("%s at %s", design, n)
          .isCloseTo(row.number(column), within(TOLERANCE_DB));
    }
  }

  private CompressorDesign lastDesign =
      new CompressorDesign(new LimiterCurve(0, 0), new Detector.Peak(), smooth(0, 0));
  private StepResponse last = StepResponse.analyze(lastDesign, new Step(-24, 0, 0, 0), 48000);

  private StepResponse response(CompressorDesign design, double sampleRateHz) {
    if (!design.equals(lastDesign)) {
      lastDesign = design;
      last = StepResponse.analyze(design, new Step(-24, 0, 0.2, 0.6), sampleRateHz);
    }
    return last;
  }

  private static SmoothedBallistics smooth(double attackSeconds, double releaseSeconds) {
    return new SmoothedBallistics(attackSeconds, releaseSeconds, Smoothing.BRANCHING);
  }

  @ParameterizedTest
  @CsvSource({"0.01, 0.1, 48000", "0.01, 0.05, 44100", "0.03, 0.5, 96000"})
  void branching_step_reaches63PercentAfterAttackAndRelease(
      double attack, double release, double sampleRateHz) {
    GainSmoother smoother = smooth(attack, release).newSmoother(sampleRateHz);
    double reduction = 0;
    for (int i = 0; i < Math.round(attack * sampleRateHz); i++) {
      reduction = smoother.process(10);
    }
    assertThat(reduction).isCloseTo(10 * (1 - MINUS_63_PERCENT), within(1e-9));
    smoother.settle(10);
    for (int i = 0; i < Math.round(release * sampleRateHz); i++) {
      reduction = smoother.process(0);
    }
    assertThat(reduction).isCloseTo(10 * MINUS_63_PERCENT, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0.06, 1.5, 0.55", "0.04, 0.5, 0", "0.1, 3, 1", "0.1, 0.1, 0.5"})
  void twoStage_afterLongReduction_releasesAsDefined(double fast, double slow, double split) {
    GainSmoother smoother = new TwoStageBallistics(0.01, fast, slow, split).newSmoother(48000);
    for (int i = 0; i < 48000 * 20; i++) {
      smoother.process(10);
    }
    for (int i = 1; i <= 48000; i++) {
      double t = i / 48000.0;
      double expected = 10 * (split * Math.exp(-t / fast) + (1 - split) * Math.exp(-t / slow));
      assertThat(smoother.process(0)).isCloseTo(expected, within(1e-9));
    }
  }

  @Test
  void twoStage_afterShortPeak_releasesFast() {
    GainSmoother smoother = new TwoStageBallistics(0, 0.06, 1.5, 0.5).newSmoother(48000);
    for (int i = 0; i < 48; i++) {
      smoother.process(10);
    }
    double reduction = 10;
    for (int i = 0; i < 48000 * 0.3; i++) {
      reduction = smoother.process(0);
    }
    // Five fast time constants; had the slow half been filled, 4 dB would be left.
    assertThat(reduction).isLessThan(0.9);
  }

  static Stream<Arguments> extremes() {
    Stream.Builder<Arguments> cases = Stream.builder();
    for (double rate : new double[] {8000, 48000, 384000}) {
      for (double attack : new double[] {0, 5e-6, 0.5}) {
        for (double release : new double[] {0, 1e-3, 10, 1000}) {
          cases.add(Arguments.of(smooth(attack, release), rate));
          cases.add(
              Arguments.of(new SmoothedBallistics(attack, release, Smoothing.DECOUPLED), rate));
          cases.add(Arguments.of(new TwoStageBallistics(attack, release / 10, release, 0.5), rate));
        }
      }
    }
    return cases.build();
  }

  @ParameterizedTest
  @MethodSource("extremes")
  void smoother_noiseAtExtremes_staysBetweenZeroAndTheMost(Ballistics ballistics, double rate) {
    GainSmoother smoother = ballistics.newSmoother(rate);
    Random random = new Random(1);
    for (int i = 0; i < 20000; i++) {
      double wanted = i % 500 < 250 ? 40 * random.nextDouble() : 0;
      assertThat(smoother.process(wanted)).isBetween(0.0, 40.0);
    }
    smoother.settle(40);
    double before = 40;
    for (int i = 0; i < 20000; i++) {
      double after = smoother.process(3);
      assertThat(after).isBetween(3 - 1e-12, before + 1e-12);
      before = after;
    }
  }

  @ParameterizedTest
  @MethodSource("extremes")
  void smoother_nanAndNegative_countAsNoDemand(Ballistics ballistics, double rate) {
    GainSmoother odd = ballistics.newSmoother(rate);
    GainSmoother plain = ballistics.newSmoother(rate);
    odd.process(20);
    plain.process(20);
    assertThat(odd.process(Double.NaN)).isEqualTo(plain.process(0));
    assertThat(odd.process(-5)).isEqualTo(plain.process(0));
    odd.reset();
    assertThat(odd.process(0)).isZero();
  }

  @ParameterizedTest
  @EnumSource(Smoothing.class)
  void smoother_longSilence_endsAtExactlyNoReduction(Smoothing smoothing) {
    GainSmoother smoother = new SmoothedBallistics(1e-3, 5e-3, smoothing).newSmoother(48000);
    smoother.settle(40);
    double reduction = 40;
    for (int i = 0; i < 48000; i++) {
      reduction = smoother.process(0);
    }
    assertThat(reduction).isZero();
  }

  @Test
  void rms_steadySine_readsItsPeakOnceSettled() {
    LevelDetector detector = new Detector.Rms(0.05).newDetector(48000);
    double level = 0;
    for (int i = 0; i < 48000; i++) {
      level = detector.levelDb(0.5 * Math.sin(2 * Math.PI * 1000 * i / 48000));
    }
    // The ripple of a 1 kHz square after 50 ms of smoothing is below 0.01 dB.
    assertThat(level).isCloseTo(20 * Math.log10(0.5), within(0.01));
  }

  @Test
  void rms_stepOfLevel_meanSquareIs63PercentAfterTheWindow() {
    LevelDetector detector = new Detector.Rms(0.02).newDetector(48000);
    double level = 0;
    for (int i = 0; i < 960; i++) {
      level = detector.levelOfSineDb(0);
    }
    assertThat(level).isCloseTo(10 * Math.log10(1 - MINUS_63_PERCENT), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0, -120", "NaN, -120", "1e-9, -120", "1, 0", "-1, 0", "Infinity, 300"})
  void peak_specialSamples_haveTheirStatedLevels(double sample, double levelDb) {
    assertThat(new Detector.Peak().newDetector(48000).levelDb(sample))
        .isCloseTo(levelDb, within(1e-9));
  }

  @Test
  void times_negative_throw() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> smooth(-1, 0))
        .withMessageContaining("the attack must be finite and not below 0, but was -1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TwoStageBallistics(0, 1, 0.5, 0.5))
        .withMessageContaining("must not be shorter than the fast one");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TwoStageBallistics(0, 1, 2, 1.5))
        .withMessageContaining("between 0 and 1, but was 1.5");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Detector.Rms(0))
        .withMessageContaining("finite and above 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> smooth(0, 0).newSmoother(0))
        .withMessageContaining("the sample rate must be finite and above 0");
  }
}
