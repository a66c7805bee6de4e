package chainwright.dsp.loudness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The histogram beside the sorted values themselves. */
class PowerHistogramTest {

  private static final double LOWEST = 1e-7;
  private static final int STEPS_PER_DECIBEL = 1000;

  /** The width of a step. */
  private static final double STEP_DB = 1.0 / STEPS_PER_DECIBEL;

  private static PowerHistogram of(double... powers) {
    PowerHistogram histogram = new PowerHistogram(LOWEST, 100, STEPS_PER_DECIBEL);
    for (double power : powers) {
      histogram.add(power);
    }
    return histogram;
  }

  @Test
  void meansAndPercentiles_ofManyValues_areThoseOfTheSortedValues() {
    Random random = new Random(4);
    for (int trial = 0; trial < 50; trial++) {
      double spreadDb = 1 + 20 * random.nextDouble();
      double[] powers =
          random
              .doubles(1 + random.nextInt(20_000), 0, 1)
              .map(x -> Math.pow(10, -2 + spreadDb * (x - 0.5) / 10))
              .sorted()
              .toArray();
      PowerHistogram histogram = of(powers);
      double mean = Arrays.stream(powers).average().orElseThrow();
      assertThat(decibels(histogram.meanAbove(0))).isCloseTo(decibels(mean), within(1e-9));
      double gate = mean * (0.1 + 0.9 * random.nextDouble());
      double[] above = Arrays.stream(powers).filter(power -> power > gate).toArray();
      assertThat(decibels(histogram.meanAbove(gate)))
          .isCloseTo(decibels(Arrays.stream(above).average().orElseThrow()), within(STEP_DB));
      for (double share : new double[] {0.1, 0.95, 0, 1}) {
        int rank = (int) Math.round((above.length - 1) * share);
        // A value within a step of the gate may shift the ranks by one.
        double low = above[Math.max(0, rank - 1)];
        double high = above[Math.min(above.length - 1, rank + 1)];
        assertThat(decibels(histogram.percentileAbove(gate, share)))
            .isBetween(decibels(low) - STEP_DB, decibels(high) + STEP_DB);
      }
    }
  }

  private static double decibels(double power) {
    return 10 * Math.log10(power);
  }

  @Test
  void values_atTheEnds_areKeptOrLeftOut() {
    assertThat(of().meanAbove(0)).isNaN();
    assertThat(of(LOWEST, 0, Double.NaN).meanAbove(0)).isNaN();
    assertThat(of(1e9, 3e9).meanAbove(0)).isEqualTo(2e9);
    assertThat(of(1e9).percentileAbove(2e9, 0.1)).isNaN();
  }

  /** A steady tone lies in one step, together with the gate that is made of it. */
  @Test
  void gate_withinAStep_isDecidedByItsMean() {
    assertThat(of(0.1, 0.1, 0.01).meanAbove(0.0099999)).isCloseTo(0.07, within(1e-12));
    assertThat(of(0.1, 0.1, 0.01).meanAbove(0.0100001)).isCloseTo(0.1, within(1e-12));
  }
}
