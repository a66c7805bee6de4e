package chainwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitTest {

  @ParameterizedTest
  @CsvSource({
    "KILOHERTZ, 1.001, 1001",
    "KILOHERTZ, 3.1, 3100",
    "MILLISECOND, 12, 0.012",
    "MILLISECOND, 0.7, 0.0007",
    "MICROSECOND, 200, 0.0002",
    "DECIBEL, -2.5, -2.5",
    "KILOHERTZ, Infinity, Infinity",
  })
  void toBase_decimal_isRoundedOnce(Unit unit, double value, double inBase) {
    assertThat(unit.toBase(value)).isEqualTo(inBase);
  }

  @Test
  void toBase_everyWholeHertzInKilohertz_isThatHertz() {
    assertThat(IntStream.range(1000, 96_000))
        .allSatisfy(
            hertz ->
                assertThat(Unit.KILOHERTZ.toBase(Double.parseDouble(hertz + "e-3")))
                    .isEqualTo((double) hertz));
  }
}
