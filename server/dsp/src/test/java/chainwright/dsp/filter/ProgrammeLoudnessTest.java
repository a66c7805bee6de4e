package chainwright.dsp.filter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProgrammeLoudnessTest {

  /**
   * The response of the two filters that ITU-R BS.1770 prints for 48 kHz, computed from these
   * coefficients with scipy.signal.sosfreqz.
   */
  @ParameterizedTest
  @CsvSource({
    "20, -13.27536779, 0.05",
    "31.5, -7.789963989, 0.05",
    "50, -3.93405405, 0.05",
    "1000, 0.6977, 0.05"
  })
  void weighting_publishedFilters_areMet(double hertz, double weightDb, double toleranceDb) {
    assertThat(ProgrammeLoudness.K_WEIGHTING.decibelsAt(hertz))
        .isCloseTo(weightDb, within(toleranceDb));
  }

  @Test
  void change_ofAGain_isTheGain() {
    assertThat(ProgrammeLoudness.changeLu(new ConstantFactor(Math.pow(10, -4.5 / 20)), 41))
        .isCloseTo(-4.5, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    // A recording of a rock band, 4 s, measured with BS.1770 weighting: 0.6, 1.4 and 0.4 LU; a mix
    // of electronic music 1.1, 2.0 and 0.5 LU. The programme noise lies among such music.
    "50, 6, 0.4, 1.2",
    "80, 6, 0.9, 2.1",
    "80, 2, 0.2, 0.6"
  })
  void change_ofALowBell_liesAmongThatOfMusic(
      double hertz, double gainDb, double leastLu, double mostLu) {
    Response bell =
        EqualiserPrototypes.bell(
            Frequency.ofHertz(hertz), new Decibels(gainDb), new QualityFactor(1));
    assertThat(ProgrammeLoudness.changeLu(bell, 31)).isBetween(leastLu, mostLu);
  }
}
