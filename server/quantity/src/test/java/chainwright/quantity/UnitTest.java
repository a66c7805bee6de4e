package chainwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

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
    "KILOHERTZ, -0.0, 0",
  })
  void toBase_decimal_isRoundedOnce(Unit unit, double value, double inBase) {
    assertThat(unit.toBase(value)).isEqualTo(inBase);
  }

  @ParameterizedTest
  @EnumSource
  void toBase_ofEighths_isTheNearestToTheirDecimals(Unit unit) {
    Random random = new Random(20_261_130);
    for (int i = 0; i < 10_000; i++) {
      double value = random.nextInt() / 8.0;
      BigDecimal exact = BigDecimal.valueOf(value).multiply(BigDecimal.valueOf(unit.toBase()));
      assertThat(unit.toBase(value)).as("%s %s", value, unit).isEqualTo(exact.doubleValue());
    }
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
