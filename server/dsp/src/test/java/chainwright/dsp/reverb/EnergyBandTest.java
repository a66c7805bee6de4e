package chainwright.dsp.reverb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A band of a click. */
class EnergyBandTest {

  /** Source: the nominal edges of an octave, IEC 61260-1, from memory. */
  @Test
  void octaves_of500And1000Hertz_reachFrom354To1414() {
    EnergyBand band = EnergyBand.ofOctaves(500, 1000);
    assertThat(band.lowHz()).isCloseTo(353.6, within(0.1));
    assertThat(band.highHz()).isCloseTo(1414.2, within(0.1));
  }

  @Test
  void places_ofABand_shareAllOfItsEnergyByTheirFrequency() {
    EnergyBand band = EnergyBand.ofOctaves(125, 1000);
    double[] places = band.places();
    double[] shares = band.shares();
    assertThat(Arrays.stream(shares).sum()).isCloseTo(1, within(1e-12));
    assertThat(shares[shares.length - 1] / shares[0])
        .isCloseTo(places[places.length - 1] / places[0], within(1e-9));
    assertThat(places[0]).isGreaterThan(band.lowHz());
    assertThat(places[places.length - 1]).isLessThan(band.highHz());
  }

  @Test
  void band_belowAFrequencyInsideIt_endsThere() {
    assertThat(EnergyBand.ofOctaves(4000, 4000).below(5000).highHz()).isEqualTo(5000);
    assertThat(EnergyBand.ofOctaves(125, 125).below(5000).highHz()).isLessThan(200);
  }

  @ParameterizedTest
  @CsvSource({"0, 100", "100, 100", "200, 100", "NaN, 100", "10, Infinity"})
  void ends_thatDoNotRiseAbove0_throw(double lowHz, double highHz) {
    assertThatThrownBy(() -> new EnergyBand(lowHz, highHz))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("rise");
  }
}
