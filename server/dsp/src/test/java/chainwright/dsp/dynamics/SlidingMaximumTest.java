package chainwright.dsp.dynamics;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The largest of the last values. */
class SlidingMaximumTest {

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7, 64, 1000})
  void next_ofAnyRow_isTheLargestOfItsWindow(int window) {
    SplittableRandom random = new SplittableRandom(window);
    double[] row = random.doubles(3_000).map(x -> Math.rint(20 * x)).toArray();
    SlidingMaximum largest = new SlidingMaximum(window);
    for (int i = 0; i < row.length; i++) {
      double expected = row[i];
      for (int k = Math.max(0, i - window + 1); k < i; k++) {
        expected = Math.max(expected, row[k]);
      }
      assertThat(largest.next(row[i])).as("value %d", i).isEqualTo(expected);
    }
  }
}
