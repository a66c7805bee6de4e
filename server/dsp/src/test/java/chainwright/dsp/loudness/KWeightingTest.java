package chainwright.dsp.loudness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.filter.BiquadCoefficients;
import chainwright.dsp.filter.FilterCascade;
import chainwright.dsp.reference.ReferenceTable;
import chainwright.quantity.SampleRate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class KWeightingTest {

  /** The printed numbers have 14 decimals. */
  private static final double PRINTED = 1e-13;

  private static final double TABLE_DB = 1e-6;

  /** Source: ITU-R BS.1770-5, Annex 1, tables 1 and 2. */
  @Test
  void design_at48Kilohertz_isThePrintedOne() {
    KWeighting weighting = KWeighting.design(SampleRate.ofHertz(48_000));
    BiquadCoefficients shelf = weighting.shelf();
    assertThat(shelf.b0()).isCloseTo(1.53512485958697, within(PRINTED));
    assertThat(shelf.b1()).isCloseTo(-2.69169618940638, within(PRINTED));
    assertThat(shelf.b2()).isCloseTo(1.19839281085285, within(PRINTED));
    assertThat(shelf.a1()).isCloseTo(-1.69065929318241, within(PRINTED));
    assertThat(shelf.a2()).isCloseTo(0.73248077421585, within(PRINTED));
    BiquadCoefficients highPass = weighting.highPass();
    assertThat(highPass.a1()).isCloseTo(-1.99004745483398, within(PRINTED));
    assertThat(highPass.a2()).isCloseTo(0.99007225036621, within(PRINTED));
    assertThat(List.of(highPass.b0(), highPass.b1(), highPass.b2()))
        .containsExactly(1.0, -2.0, 1.0);
  }

  /** Source: reference data, see ORIGIN.md in the resources. */
  @Test
  void response_atPrintedAndOtherRate_equalsTheTable() {
    for (ReferenceTable.Row row : ReferenceTable.read(KWeightingTest.class, "k_weighting.csv")) {
      assertThat(decibels(row.number("fs"), row.number("f_hz")))
          .as("%s Hz at %s Hz", row.text("f_hz"), row.text("fs"))
          .isCloseTo(row.number("k_db"), within(TABLE_DB));
    }
  }

  /** What the design's comment says of other rates. */
  @ParameterizedTest
  @CsvSource({
    "8000, 0.215",
    "16000, 0.086",
    "44100, 0.004",
    "96000, -0.022",
    "192000, -0.032",
    "384000, -0.038"
  })
  void level_aboveTheHighPass_differsFrom48KilohertzAsStated(double rateHz, double differenceDb) {
    // At 300 Hz, the high-pass has ended and the shelf has not begun, nor bent its axis.
    assertThat(decibels(rateHz, 300) - decibels(48_000, 300)).isCloseTo(differenceDb, within(0.01));
  }

  @ParameterizedTest
  @ValueSource(doubles = {8_000, 11_025, 48_000, 192_000, 384_000})
  void design_atAnyRate_isStable(double rateHz) {
    KWeighting weighting = KWeighting.design(SampleRate.ofHertz(rateHz));
    assertThat(weighting.shelf().isStable()).isTrue();
    assertThat(weighting.highPass().isStable()).isTrue();
  }

  private static double decibels(double rateHz, double hertz) {
    SampleRate rate = SampleRate.ofHertz(rateHz);
    KWeighting weighting = KWeighting.design(rate);
    return FilterCascade.of(rate, List.of(weighting.shelf(), weighting.highPass()))
        .toDecibels(new double[] {hertz})[0];
  }
}
