package chainwright.dsp.dynamics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.reference.ReferenceTable;
import chainwright.dsp.reference.ReferenceTable.Row;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LowNoteDistortionTest {

  private static CompressorDesign design(double attackSeconds, double releaseSeconds) {
    return design(
        new SmoothedBallistics(attackSeconds, releaseSeconds, Smoothing.DECOUPLED),
        new Detector.Peak());
  }

  private static CompressorDesign design(Ballistics ballistics, Detector detector) {
    return new CompressorDesign(CompressorCurve.of(-20, 4, 0), detector, ballistics);
  }

  @Test
  void peakCompressor_referenceGrid_agreesToItsRounding() {
    for (Row row : ReferenceTable.read(LowNoteDistortionTest.class, "low_note_distortion.csv")) {
      double note = row.number("note_hz");
      LowNoteDistortion distortion =
          LowNoteDistortion.analyze(
              design(row.number("attack_periods") / note, row.number("release_periods") / note),
              note);
      // Half a step of rounding, and 2 % for the different number of samples a period.
      double percent = row.number("thd_percent");
      assertThat(100 * distortion.thdShare())
          .as("%s", row)
          .isCloseTo(percent, within(0.005 + 0.02 * percent));
      double ripple = row.number("ripple_db");
      assertThat(distortion.rippleDb())
          .as("%s", row)
          .isCloseTo(ripple, within(0.005 + 0.02 * ripple));
    }
  }

  static Stream<CompressorDesign> designs() {
    Stream.Builder<CompressorDesign> all = Stream.builder();
    for (Detector detector : new Detector[] {new Detector.Peak(), new Detector.Rms(0.01)}) {
      for (double[] times :
          new double[][] {{0, 0.02}, {0.0005, 0.015}, {0.002, 0.06}, {0.01, 0.15}, {0.03, 0.01}}) {
        for (Smoothing smoothing : Smoothing.values()) {
          all.add(design(new SmoothedBallistics(times[0], times[1], smoothing), detector));
        }
        all.add(design(new TwoStageBallistics(times[0], times[1], 0.5, 0.55), detector));
      }
    }
    all.add(
        new CompressorDesign(
            new DynamicBandCurve(-20, 2, 3, 4),
            new Detector.Peak(),
            new SmoothedBallistics(0.001, 0.02, Smoothing.BRANCHING)));
    return all.build();
  }

  /**
   * Runs the real compressor for five seconds at a rate of its own, and measures its last period.
   */
  @ParameterizedTest
  @MethodSource("designs")
  void shortcut_againstTheRunningCompressor_agrees(CompressorDesign design) {
    int period = 1600;
    double note = 60;
    Compressor compressor = design.newProcessor(period * note);
    double[] last = new double[period];
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    int length = 300 * period;
    for (int i = 0; i < length; i++) {
      double sine = Math.pow(10, -14.0 / 20) * Math.sin(2 * Math.PI * (i % period) / period);
      double gain = compressor.gainDb(sine);
      last[i % period] = sine * Math.pow(10, gain / 20);
      if (i >= length - period) {
        least = Math.min(least, gain);
        most = Math.max(most, gain);
      }
    }
    LowNoteDistortion distortion = LowNoteDistortion.analyze(design, note);
    double fundamental = harmonic(last, 1);
    double squares = 0;
    for (int n = 2; n < 60; n++) {
      squares += Math.pow(harmonic(last, n), 2);
    }
    double thd = Math.sqrt(squares) / fundamental;
    // The two differ in samples a period only; an instant attack shows that most.
    assertThat(distortion.thdShare()).isCloseTo(thd, within(0.03 * thd + 1e-6));
    double third = harmonic(last, 3) / fundamental;
    assertThat(distortion.thirdHarmonicShare()).isCloseTo(third, within(0.03 * third + 1e-6));
    assertThat(distortion.rippleDb()).isCloseTo(most - least, within(0.03 * (most - least) + 1e-6));
  }

  private static double harmonic(double[] wave, int n) {
    double re = 0;
    double im = 0;
    for (int i = 0; i < wave.length; i++) {
      double angle = 2 * Math.PI * n * i / wave.length;
      re += wave[i] * Math.cos(angle);
      im += wave[i] * Math.sin(angle);
    }
    return Math.hypot(re, im);
  }

  @Test
  void note_belowTheThreshold_isClean() {
    LowNoteDistortion distortion = LowNoteDistortion.analyze(design(0.001, 0.02), 50, -20.5);
    assertThat(distortion.thdShare()).isLessThan(1e-12);
    assertThat(distortion.rippleDb()).isZero();
    assertThat(distortion.meanReductionDb()).isZero();
  }

  @Test
  void verySlowRelease_doubled_halvesTheDistortion() {
    // 10 s at 50 Hz is 500 periods; between peaks the gain moves in proportion to 1/release.
    LowNoteDistortion slow = LowNoteDistortion.analyze(branching(5), 50);
    LowNoteDistortion slower = LowNoteDistortion.analyze(branching(10), 50);
    assertThat(slower.thdShare() / slow.thdShare()).isCloseTo(0.5, within(0.02));
    // The gain stands just short of the peak's reduction, 3/4 of 6 dB.
    assertThat(slower.meanReductionDb()).isBetween(4.3, 4.5);
  }

  private static CompressorDesign branching(double releaseSeconds) {
    return design(
        new SmoothedBallistics(0.001, releaseSeconds, Smoothing.BRANCHING), new Detector.Peak());
  }

  @Test
  void smallestTimes_limitOf1Percent_clearItNarrowly() {
    double note = 41.2;
    CompressorDesign fast = design(0.001, 0.015);
    double limit = 0.01;
    assertThat(LowNoteDistortion.analyze(fast, note).thdShare()).isGreaterThan(limit);
    OptionalDouble attack = LowNoteDistortion.smallestAttackSeconds(fast, note, -14, limit);
    checkNarrow(design(attack.orElseThrow(), 0.015), note, limit);
    OptionalDouble release = LowNoteDistortion.smallestReleaseSeconds(fast, note, -14, limit);
    checkNarrow(design(0.001, release.orElseThrow()), note, limit);
  }

  private static void checkNarrow(CompressorDesign design, double noteHz, double limit) {
    assertThat(LowNoteDistortion.analyze(design, noteHz).thdShare()).isBetween(0.97 * limit, limit);
  }

  @Test
  void distortion_longerTimes_falls() {
    double note = 50;
    double before = Double.POSITIVE_INFINITY;
    for (double attack = 0.0001; attack < 0.2; attack *= 1.3) {
      double thd = LowNoteDistortion.analyze(design(attack, 0.03), note).thdShare();
      assertThat(thd).as("attack %s", attack).isLessThanOrEqualTo(before * 1.002);
      before = thd;
    }
    before = Double.POSITIVE_INFINITY;
    for (double release = 0.003; release < 3; release *= 1.3) {
      double thd = LowNoteDistortion.analyze(design(0.002, release), note).thdShare();
      assertThat(thd).as("release %s", release).isLessThanOrEqualTo(before * 1.002);
      before = thd;
    }
  }

  @Test
  void smallestTimes_unreachableLimit_isEmpty() {
    assertThat(LowNoteDistortion.smallestReleaseSeconds(design(0, 0.01), 50, -14, 1e-9)).isEmpty();
  }

  @Test
  void analyze_wrongNumber_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LowNoteDistortion.analyze(design(0, 0.1), 0))
        .withMessageContaining("the note must be finite and above 0, but was 0");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> LowNoteDistortion.smallestAttackSeconds(design(0, 0.1), 50, -14, Double.NaN))
        .withMessageContaining("the limit must be finite and above 0");
  }
}
