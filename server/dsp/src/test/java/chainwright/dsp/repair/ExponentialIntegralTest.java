package chainwright.dsp.repair;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExponentialIntegralTest {

  /** {@code scipy.special.exp1}, scipy 1.17.1. */
  @ParameterizedTest
  @CsvSource({
    "1e-10, 22.448635265138922",
    "0.01, 4.037929576538113",
    "0.5, 0.5597735947761608",
    "1, 0.2193839343955205",
    "1.0001, 0.21934715012989106",
    "2, 0.048900510708061125",
    "10, 4.156968929685325e-06",
    "50, 3.783264029550459e-24",
  })
  void integral_ofANumber_isWhatScipyFinds(double x, double expected) {
    assertThat(ExponentialIntegral.of(x)).isCloseTo(expected, within(1e-13 * expected));
  }
}
