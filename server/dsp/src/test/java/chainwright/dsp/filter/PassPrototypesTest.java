package chainwright.dsp.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.reference.ReferenceTable;
import chainwright.quantity.Frequency;
import chainwright.quantity.SampleRate;
import chainwright.quantity.Slope;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PassPrototypesTest {

  private static final Frequency CUTOFF = Frequency.ofHertz(1000);

  /** The tables below have two or four decimals. */
  private static final double TWO_DECIMALS = 0.005;

  private static final double FOUR_DECIMALS = 0.00006;

  /** The sum of crossover halves is flat to rounding. */
  private static final double FLAT_DB = 1e-6;

  /** Source: Butterworth 1930, {@code 10 log10(1 + 2^2n)}. */
  @ParameterizedTest
  @CsvSource({"1, 6.99", "2, 12.30", "3, 18.13", "4, 24.10", "6, 36.12", "8, 48.16"})
  void butterworth_anOctaveIntoTheStopBand_attenuates(int order, double attenuationDb) {
    check(PassFamily.BUTTERWORTH, order, 2, -attenuationDb);
    check(PassFamily.BUTTERWORTH, order, 1, -3.0103);
  }

  /** Source: Linkwitz and Riley 1976, half the voltage at the crossover frequency. */
  @ParameterizedTest
  @ValueSource(ints = {2, 4, 6, 8})
  void linkwitzRiley_atTheCutoff_isHalf(int order) {
    check(PassFamily.LINKWITZ_RILEY, order, 1, -6.0206);
  }

  /** Source: computed with scipy's besselap, normalisation {@code phase}. */
  @ParameterizedTest
  @CsvSource({"2, -4.77", "3, -6.24", "4, -7.58", "6, -10.12", "8, -12.59"})
  void bessel_normalisedByPhase_hasItsGainAtTheCutoff(int order, double gainDb) {
    check(PassFamily.BESSEL_PHASE, order, 1, gainDb);
    check(PassFamily.BESSEL_MAGNITUDE, order, 1, -3.0103);
  }

  /** Source: computed with scipy's besselap, normalisation {@code mag}; frequency and Q. */
  @ParameterizedTest
  @CsvSource({
    "2, 0, 1.2720, 0.5774",
    "3, 1, 1.4476, 0.6910",
    "4, 0, 1.4302, 0.5219",
    "4, 1, 1.6034, 0.8055",
    "6, 0, 1.6039, 0.5103",
    "6, 1, 1.6892, 0.6112",
    "6, 2, 1.9047, 1.0233",
    "8, 0, 1.7785, 0.5060",
    "8, 1, 1.8321, 0.5596",
    "8, 2, 1.9532, 0.7109",
    "8, 3, 2.1887, 1.2257"
  })
  void bessel_normalisedByMagnitude_hasTheTablesSections(
      int order, int index, double frequency, double quality) {
    AnalogueSection section =
        PassPrototypes.lowPass(PassFamily.BESSEL_MAGNITUDE, order, CUTOFF).sections().get(index);
    assertThat(Math.sqrt(section.d0() / section.d2())).isCloseTo(frequency, within(FOUR_DECIMALS));
    assertThat(Math.sqrt(section.d0() * section.d2()) / section.d1())
        .isCloseTo(quality, within(FOUR_DECIMALS));
  }

  /** Source: Butterworth section qualities, 1/(2 sin of odd multiples of pi/2n). */
  @ParameterizedTest
  @CsvSource({
    "2, 0, 0.7071",
    "3, 1, 1",
    "4, 0, 0.5412",
    "4, 1, 1.3066",
    "5, 1, 0.6180",
    "5, 2, 1.6180",
    "7, 3, 2.2470",
    "8, 0, 0.5098",
    "8, 1, 0.6013",
    "8, 2, 0.9000",
    "8, 3, 2.5629"
  })
  void butterworth_ofEachOrder_hasTheTablesSections(int order, int index, double quality) {
    AnalogueSection section =
        PassPrototypes.lowPass(PassFamily.BUTTERWORTH, order, CUTOFF).sections().get(index);
    assertThat(1 / section.d1()).isCloseTo(quality, within(FOUR_DECIMALS));
  }

  @Test
  void crossover_besideTheTable_sumsToItsAllPass() {
    for (ReferenceTable.Row row : ReferenceCases.table("responses/lr_crossover_sum.csv")) {
      double order = row.number("order");
      Crossover crossover =
          Crossover.of(
              Frequency.ofHertz(row.number("f0_hz")),
              new Slope(6.0 * order),
              SampleRate.ofHertz(row.number("fs")));
      assertThat(crossover.high().gain()).isEqualTo(row.number("hp_sign"));
      double[] hertz = {row.number("f_hz")};
      Response sum = new SumOfPaths(List.of(crossover.low(), crossover.high()));
      assertThat(sum.toDecibels(hertz)[0]).isCloseTo(row.number("sum_mag_db"), within(FLAT_DB));
      assertThat(
              Math.IEEEremainder(
                  sum.toWrappedPhase(hertz)[0] - row.number("sum_phase_rad"), 2 * Math.PI))
          .as("order %s at %s Hz", order, hertz[0])
          .isCloseTo(0, within(1e-6));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {6, 12, 24, 36, 48})
  void crossover_ofEverySlope_equalsItsAllPass(double slope) {
    for (double hertz : new double[] {40, 1000, 9000, 20_000}) {
      Crossover crossover =
          Crossover.of(Frequency.ofHertz(hertz), new Slope(slope), SampleRate.DEFAULT);
      double[] grid = FrequencyGrid.audible(SampleRate.DEFAULT, 300).with(hertz).toHertz();
      Response sum = new SumOfPaths(List.of(crossover.low(), crossover.high()));
      double[] sumPhase = sum.toWrappedPhase(grid);
      double[] allPassPhase = crossover.sum().toWrappedPhase(grid);
      double[] decibels = sum.toDecibels(grid);
      double[] delay = sum.toGroupDelay(grid);
      double[] allPassDelay = crossover.sum().toGroupDelay(grid);
      for (int i = 0; i < grid.length; i++) {
        assertThat(decibels[i]).as("%s Hz", grid[i]).isCloseTo(0, within(FLAT_DB));
        assertThat(Math.IEEEremainder(sumPhase[i] - allPassPhase[i], 2 * Math.PI))
            .isCloseTo(0, within(1e-6));
        assertThat(delay[i]).isCloseTo(allPassDelay[i], within(1e-6 * (1e-5 + allPassDelay[i])));
      }
    }
  }

  @Test
  void crossover_of18DecibelsAnOctave_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Crossover.of(CUTOFF, new Slope(18), SampleRate.DEFAULT))
        .withMessage("the order of a Linkwitz-Riley filter must be even, but was 3");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 3, 54, -6})
  void order_ofSlopeThatNoOrderHas_throws(double slope) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PassPrototypes.order(new Slope(slope)))
        .withMessageStartingWith("the slope must be a multiple of 6 dB/oct from 6 to 48");
  }

  @Test
  void design_cutoffAtNyquist_throws() {
    AnaloguePrototype prototype =
        PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 2, Frequency.ofHertz(24_000));
    for (Curve curve : Curve.values()) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> curve.design(prototype, SampleRate.DEFAULT))
          .withMessage("the frequency must lie between 0 Hz and 24 kHz, but was 24 kHz");
    }
  }

  /** The low-pass at a multiple of the cutoff, and the high-pass at its mirror image. */
  private static void check(PassFamily family, int order, double multiple, double gainDb) {
    assertThat(PassPrototypes.lowPass(family, order, CUTOFF).decibelsAt(CUTOFF.hertz() * multiple))
        .isCloseTo(gainDb, within(TWO_DECIMALS));
    assertThat(PassPrototypes.highPass(family, order, CUTOFF).decibelsAt(CUTOFF.hertz() / multiple))
        .isCloseTo(gainDb, within(TWO_DECIMALS));
  }
}
