package chainwright.dsp.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;
import java.util.List;
import org.junit.jupiter.api.Test;

class ResponseSearchTest {

  private static final double CLOSE_RELATIVE = 1e-9;

  /**
   * Two Butterworth high-passes of second order at 80 Hz are half the power together where {@code
   * (1 + x^4)^2 = 2}, by the formula of Butterworth 1930.
   */
  @Test
  void findCrossings_ofStackedHighPasses_givesTheirCombinedCorner() {
    AnaloguePrototype one =
        PassPrototypes.highPass(PassFamily.BUTTERWORTH, 2, Frequency.ofHertz(80));
    double expected = 80 / Math.pow(Math.sqrt(2) - 1, 0.25);
    List<Double> corners =
        ResponseSearch.findCrossings(
            new ResponseProduct(List.of(one, one)), ResponseSearch.HALF_POWER_DB, 10, 20_000);
    assertThat(corners).hasSize(1);
    assertThat(corners.get(0)).isCloseTo(expected, within(expected * CLOSE_RELATIVE));
  }

  /** A band-pass is half the power at two frequencies {@code centre / Q} apart. */
  @Test
  void findCrossings_ofABandPass_givesBothEdges() {
    AnaloguePrototype bandPass =
        EqualiserPrototypes.bandPass(Frequency.ofHertz(900), new QualityFactor(3));
    List<Double> edges =
        ResponseSearch.findCrossings(bandPass, ResponseSearch.HALF_POWER_DB, 10, 20_000);
    assertThat(edges).hasSize(2);
    assertThat(edges.get(1) - edges.get(0)).isCloseTo(300, within(1e-6));
  }

  @Test
  void findCrossings_ofALevelNeverReached_isEmpty() {
    assertThat(ResponseSearch.findCrossings(new ConstantFactor(1), -3, 10, 20_000)).isEmpty();
  }

  @Test
  void findHighestAndLowest_ofTwoBells_giveTheirPeaks() {
    Response bells =
        new ResponseProduct(
            List.of(
                EqualiserPrototypes.bell(
                    Frequency.ofHertz(211), new Decibels(6), new QualityFactor(5)),
                EqualiserPrototypes.bell(
                    Frequency.ofHertz(7919), new Decibels(-9), new QualityFactor(5))));
    ResponseSearch.Extreme highest = ResponseSearch.findHighest(bells, 20, 20_000);
    ResponseSearch.Extreme lowest = ResponseSearch.findLowest(bells, 20, 20_000);
    assertThat(highest.hertz()).isCloseTo(211, within(0.1));
    assertThat(highest.decibels()).isCloseTo(6, within(0.01));
    assertThat(lowest.hertz()).isCloseTo(7919, within(1.0));
    assertThat(lowest.decibels()).isCloseTo(-9, within(0.01));
  }

  @Test
  void findHighest_ofABandThatFalls_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ResponseSearch.findHighest(new ConstantFactor(1), 2000, 1000))
        .withMessageStartingWith("a grid must rise from above 0 Hz");
  }

  @Test
  void grid_withExtraPoints_risesAndHoldsThemExactly() {
    FrequencyGrid grid =
        FrequencyGrid.audible(SampleRate.ofHertz(32_000), 97).with(50, 1234.5, 50, 0);
    assertThat(grid.toHertz())
        .isSorted()
        .contains(0, 50, 1234.5, 10, 16_000)
        .hasSize(grid.size())
        .doesNotHaveDuplicates();
    assertThat(FrequencyGrid.audible(SampleRate.DEFAULT, 2).toHertz()).containsExactly(10, 22_000);
  }
}
