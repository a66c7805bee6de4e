package chainwright.dsp.dynamics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.reference.ReferenceTable;
import chainwright.dsp.reference.ReferenceTable.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class StaticCurveTest {

  /** The reference is written with 15 digits. */
  private static final double REFERENCE_TOLERANCE_DB = 1e-9;

  private static final double INF = Double.POSITIVE_INFINITY;

  private static void check(StaticCurve curve, double inputDb, double outputDb, double gainDb) {
    assertThat(curve.outputDb(inputDb))
        .as("output of %s at %s dB", curve, inputDb)
        .isCloseTo(outputDb, within(REFERENCE_TOLERANCE_DB));
    assertThat(-curve.gainReductionDb(inputDb))
        .as("gain of %s at %s dB", curve, inputDb)
        .isCloseTo(gainDb, within(REFERENCE_TOLERANCE_DB));
  }

  @Test
  void compressor_referenceTable_agrees() {
    for (Row row : ReferenceTable.read(StaticCurveTest.class, "compressor_static.csv")) {
      check(
          CompressorCurve.of(
              row.number("threshold_db"), row.number("ratio"), row.number("knee_db")),
          row.number("in_db"),
          row.number("out_db"),
          row.number("gain_db"));
    }
  }

  @Test
  void expander_referenceTable_agrees() {
    for (Row row : ReferenceTable.read(StaticCurveTest.class, "expander_static.csv")) {
      check(
          new ExpanderCurve(
              row.number("threshold_db"), row.number("ratio"), row.number("knee_db"), INF),
          row.number("in_db"),
          row.number("out_db"),
          row.number("gain_db"));
    }
  }

  // Worked by hand from the definitions: input, output, gain without make-up or static gain.
  static Stream<Arguments> workedByHand() {
    return Stream.of(
        Arguments.of(new CompressorCurve(-20, 4, 0, 3), -8, -14, -9),
        Arguments.of(new LimiterCurve(-1, 0), 5, -1, -6),
        Arguments.of(new LimiterCurve(-1, 2), -1, -1.25, -0.25),
        Arguments.of(new MaxReductionCurve(CompressorCurve.of(-30, 4, 0), 6), -26, -29, -3),
        Arguments.of(new MaxReductionCurve(CompressorCurve.of(-30, 4, 0), 6), -10, -16, -6),
        Arguments.of(new ExpanderCurve(-50, 2, 0, 12), -56, -62, -6),
        Arguments.of(new ExpanderCurve(-50, 2, 0, 12), -80, -92, -12),
        Arguments.of(GateCurve.of(-40, 20, 4), -39, -39, 0),
        Arguments.of(GateCurve.of(-40, 20, 4), -42, -62, -20),
        Arguments.of(GateCurve.of(-40, 20, 4).closingCurve(), -42, -42, 0),
        Arguments.of(GateCurve.of(-40, 20, 4).closingCurve(), -45, -65, -20),
        Arguments.of(new DynamicBandCurve(-30, 2, 4, 0), -40, -40, 0),
        Arguments.of(new DynamicBandCurve(-30, 2, 4, 3), -26, -28, -2),
        Arguments.of(new DynamicBandCurve(-30, 2, 4, 3), -10, -14, -4),
        Arguments.of(new DynamicBandCurve(-30, 2, 4, 3), -34, -32, 2),
        Arguments.of(new DynamicBandCurve(-30, 2, 4, 3), -90, -87, 3));
  }

  @ParameterizedTest
  @MethodSource("workedByHand")
  void curve_workedByHand_agrees(
      StaticCurve curve, double inputDb, double outputDb, double gainDb) {
    check(curve, inputDb, outputDb, gainDb);
    assertThat(curve.gainDb(inputDb)).isCloseTo(outputDb - inputDb, within(1e-12));
  }

  static List<StaticCurve> reducingCurves() {
    List<StaticCurve> curves = new ArrayList<>();
    for (double threshold : new double[] {-60, -18, 0}) {
      for (double knee : new double[] {0, 0.5, 12, 40}) {
        for (double ratio : new double[] {1, 1.5, 4, 20}) {
          CompressorCurve compressor = CompressorCurve.of(threshold, ratio, knee);
          curves.add(compressor);
          curves.add(new MaxReductionCurve(compressor, 5));
          curves.add(new ExpanderCurve(threshold, ratio, knee, 24));
          curves.add(new ExpanderCurve(threshold, ratio, knee, INF));
          curves.add(new GateCurve(threshold, ratio, knee, 30, 4));
        }
        curves.add(CompressorCurve.of(threshold, INF, knee));
        curves.add(new LimiterCurve(threshold, knee));
        curves.add(new DynamicBandCurve(threshold, 3, 6, 0));
      }
    }
    return curves;
  }

  @ParameterizedTest
  @MethodSource("reducingCurves")
  void curve_overAllLevels_isContinuousMonotoneAndNeverBoosts(StaticCurve curve) {
    double step = 1.0 / 64;
    // Steepest slope here is the expander's 20:1.
    double mostRise = 20 * step + 1e-9;
    for (double level = -130; level < 30; level += step) {
      double rise = curve.outputDb(level + step) - curve.outputDb(level);
      assertThat(rise).as("rise at %s", level).isBetween(-1e-9, mostRise);
      assertThat(curve.gainReductionDb(level)).as("reduction at %s", level).isNotNegative();
    }
  }

  @ParameterizedTest
  @CsvSource({"-20, 4, 6", "-20, inf, 12", "0, 1.5, 1", "-48, 20, 30"})
  void compressorAndExpander_kneeEnds_haveOneSlope(double threshold, String ratio, double knee) {
    double number = ratio.equals("inf") ? INF : Double.parseDouble(ratio);
    List<StaticCurve> curves = new ArrayList<>();
    curves.add(CompressorCurve.of(threshold, number, knee));
    if (number < INF) {
      curves.add(new ExpanderCurve(threshold, number, knee, INF));
    }
    double h = 1e-4;
    for (StaticCurve curve : curves) {
      for (double end : new double[] {threshold - knee / 2, threshold + knee / 2}) {
        double before = (curve.outputDb(end) - curve.outputDb(end - h)) / h;
        double after = (curve.outputDb(end + h) - curve.outputDb(end)) / h;
        // The parabola bends by at most ratio · h / knee within h of its end.
        assertThat(before).as("%s at %s", curve, end).isCloseTo(after, within(20 * h / knee));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "-1, 0", "-1, 3", "-0.1, 12", "-6.3, 0.7"})
  void limiter_anyInput_staysAtOrBelowItsCeiling(double ceiling, double knee) {
    LimiterCurve curve = new LimiterCurve(ceiling, knee);
    for (double level = -60; level <= 60; level += 0.013) {
      assertThat(curve.outputDb(level)).isLessThanOrEqualTo(ceiling);
    }
    assertThat(curve.outputDb(INF)).isEqualTo(ceiling);
  }

  @ParameterizedTest
  @MethodSource("reducingCurves")
  void curve_silenceAndNan_giveSilenceAndNan(StaticCurve curve) {
    assertThat(curve.outputDb(-INF)).isEqualTo(-INF);
    assertThat(curve.gainReductionDb(Double.NaN)).isNaN();
    assertThat(curve.outputDb(Double.NaN)).isNaN();
  }

  static Stream<Arguments> wrongSettings() {
    return Stream.of(
        wrong(() -> CompressorCurve.of(-20, 0.5, 0), "ratio must be at least 1, but was 0.5"),
        wrong(() -> CompressorCurve.of(-20, Double.NaN, 0), "ratio must be at least 1"),
        wrong(() -> CompressorCurve.of(-20, 2, -1), "knee width must be finite and not below 0"),
        wrong(() -> CompressorCurve.of(-INF, 2, 0), "threshold must be finite"),
        wrong(() -> new LimiterCurve(Double.NaN, 0), "ceiling must be finite"),
        wrong(() -> new ExpanderCurve(-40, INF, 3, 10), "infinite ratio has no knee"),
        wrong(() -> new ExpanderCurve(-40, 2, 3, -1), "range must not be below 0 dB"),
        wrong(() -> GateCurve.of(-40, INF, 3), "range must be finite"),
        wrong(() -> GateCurve.of(-40, 20, -3), "hysteresis must be finite and not below 0"));
  }

  private static Arguments wrong(ThrowingCallable make, String message) {
    return Arguments.of(make, message);
  }

  @ParameterizedTest
  @MethodSource("wrongSettings")
  void curve_wrongSetting_throws(ThrowingCallable make, String message) {
    assertThatIllegalArgumentException().isThrownBy(make).withMessageContaining(message);
  }
}
