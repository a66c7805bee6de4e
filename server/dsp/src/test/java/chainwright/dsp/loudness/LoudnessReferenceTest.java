package chainwright.dsp.loudness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.reference.ReferenceTable;
import chainwright.quantity.SampleRate;
import com.google.gson.JsonObject;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The meters beside libebur128 and independent calculations.
 *
 * <p>Source: reference data, see ORIGIN.md in the resources. Tolerances are those that the data
 * suggest; true peaks are compared on tones alone, since estimators differ on noise by 1 dB.
 */
class LoudnessReferenceTest {

  private static final double INTEGRATED_LU = 0.01;
  private static final double MAXIMUM_LU = 0.02;
  private static final double RANGE_LU = 0.05;
  private static final double SERIES_LU = 0.01;
  private static final double ANNEX_2_DB = 0.02;
  private static final double FINE_DB = 0.1;

  /** Below this, the series are rounding residue. */
  private static final double LOWEST_COMPARED_LUFS = -150;

  static List<JsonObject> cases() {
    return LoudnessCases.all();
  }

  static List<JsonObject> tones() {
    return LoudnessCases.having("true_peak_other").stream()
        .filter(one -> !one.get("kind").getAsString().equals("lcg"))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void loudness_ofReferenceCase_equalsTheLibraries(JsonObject one) {
    LoudnessReading reading = measure(one);
    JsonObject library = one.getAsJsonObject("libebur128");
    JsonObject formula = one.getAsJsonObject("numpy_bs1770");
    check(reading.integratedLufs(), library, "integrated_lufs", INTEGRATED_LU);
    check(reading.integratedLufs(), formula, "integrated_lufs", INTEGRATED_LU);
    check(reading.relativeGateLufs(), formula, "relative_gate_lufs", INTEGRATED_LU);
    check(reading.momentaryMaxLufs(), library, "momentary_max_lufs", MAXIMUM_LU);
    check(reading.momentaryMaxLufs(), formula, "momentary_max_lufs_1ms", MAXIMUM_LU);
    check(reading.shortTermMaxLufs(), library, "shortterm_max_lufs", MAXIMUM_LU);
    check(reading.shortTermMaxLufs(), formula, "shortterm_max_lufs_1ms", MAXIMUM_LU);
    check(reading.rangeLu(), formula, "lra_hop100ms_lu", RANGE_LU);
  }

  @ParameterizedTest
  @MethodSource("tones")
  void truePeak_ofReferenceTone_equalsTheCalculations(JsonObject one) {
    double[][] signal = LoudnessCases.signal(one);
    int sixSeconds = (int) (6 * LoudnessCases.rateHz(one));
    TruePeakMeter meter = TruePeakMeter.ofBoth(signal.length);
    meter.process(signal, 0, Math.min(sixSeconds, signal[0].length));
    List<TruePeakReading> readings = meter.measure();
    JsonObject other = one.getAsJsonObject("true_peak_other");
    double annex2 = readings.stream().mapToDouble(TruePeakReading::annex2Dbtp).max().orElseThrow();
    double fine = readings.stream().mapToDouble(TruePeakReading::fineDbtp).max().orElseThrow();
    check(annex2, other, "annex2_fir_4x_dbtp", ANNEX_2_DB);
    check(fine, other, "sinc_32x_dbtp", FINE_DB);
  }

  @ParameterizedTest
  @ValueSource(strings = {"ebu3341_9", "ebu3341_12", "noise_steps_44k1"})
  void loudness_onItsWay_equalsTheLibrary(String id) {
    JsonObject one = LoudnessCases.named(id);
    double[][] signal = LoudnessCases.signal(one);
    LoudnessMeter meter = meter(one);
    int step = (int) (LoudnessCases.rateHz(one) / 10);
    int from = 0;
    for (ReferenceTable.Row row :
        ReferenceTable.read(LoudnessCases.class, "series_" + id + ".csv")) {
      meter.process(signal, from, step);
      from += step;
      checkStep(row, "momentary_lufs", meter.momentaryLufs());
      checkStep(row, "shortterm_lufs", meter.shortTermLufs());
    }
    assertThat(from).as("the series goes on to the end").isGreaterThan(signal[0].length - step);
  }

  private static void checkStep(ReferenceTable.Row row, String column, double actual) {
    String cell = row.text(column);
    if (cell.equals("nan")) {
      assertThat(actual).as("%s at %s s", column, row.text("t_end_s")).isNaN();
    } else if (row.number(column) > LOWEST_COMPARED_LUFS) {
      assertThat(actual)
          .as("%s at %s s", column, row.text("t_end_s"))
          .isCloseTo(row.number(column), within(SERIES_LU));
    }
  }

  private static LoudnessReading measure(JsonObject one) {
    double[][] signal = LoudnessCases.signal(one);
    LoudnessMeter meter = meter(one);
    meter.process(signal, 0, signal[0].length);
    return meter.measure();
  }

  private static LoudnessMeter meter(JsonObject one) {
    return new LoudnessMeter(
        SampleRate.ofHertz(LoudnessCases.rateHz(one)), LoudnessCases.layout(one));
  }

  /** What the reference does not give, it could not measure: the window was longer. */
  private static void check(double actual, JsonObject reference, String name, double tolerance) {
    if (reference.has(name) && !reference.get(name).isJsonNull()) {
      assertThat(actual).as(name).isCloseTo(reference.get(name).getAsDouble(), within(tolerance));
    } else {
      assertThat(actual).as(name).isNaN();
    }
  }
}
