package chainwright.dsp.repair;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Source: sorting. */
class OrderStatisticTest {

  static Stream<double[]> rows() {
    Random random = new Random(1);
    return Stream.of(
        new double[] {3},
        new double[] {2, 1},
        new double[100],
        DoubleStream.iterate(0, x -> x + 1).limit(50).toArray(),
        DoubleStream.iterate(0, x -> x - 1).limit(51).toArray(),
        random.doubles(1000).toArray(),
        random.doubles(999).map(x -> Math.rint(4 * x)).toArray());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void value_atAnyPlace_isThatOfTheSortedRow(double[] row) {
    double[] sorted = row.clone();
    Arrays.sort(sorted);
    for (int place = 0; place < row.length; place++) {
      assertThat(OrderStatistic.at(row.clone(), row.length, place)).isEqualTo(sorted[place]);
    }
  }
}
