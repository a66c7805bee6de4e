package chainwright.dsp.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.DitherDesign.Shape;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What theory says of the error. Source: S. P. Lipshitz, R. A. Wannamaker, J. Vanderkooy,
 * "Quantization and Dither: A Theoretical Survey", JAES 40(5), 1992; from memory.
 */
class DitherTest {

  private static final int BITS = 16;
  private static final double STEP = 1 / 32768.0;
  private static final int FRAMES = 400_000;

  /** Four deviations of the mean of so many errors of power 1/4. [steps] */
  private static final double MEAN_TOLERANCE = 4 * Math.sqrt(0.25 / FRAMES);

  /** The power of so many errors is known within some 0.2 %; five of that. */
  private static final double POWER_TOLERANCE = 0.01;

  private static double[][] run(DitherDesign design, double[][] signal) {
    double[][] out = Arrays.stream(signal).map(double[]::clone).toArray(double[][]::new);
    design.newProcessor(Wiring.ofChannels(out.length)).process(out, 0, out[0].length);
    return out;
  }

  private static double[] constant(double steps) {
    double[] signal = new double[FRAMES];
    Arrays.fill(signal, steps * STEP);
    return signal;
  }

  private static double[] errors(DitherDesign design, double[] signal) {
    double[] out = run(design, new double[][] {signal})[0];
    for (int i = 0; i < out.length; i++) {
      out[i] = (out[i] - signal[i]) / STEP;
    }
    return out;
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }

  private static double power(double[] values) {
    return Arrays.stream(values).map(x -> x * x).average().orElseThrow();
  }

  /** Mean 0 and power 3/12, wherever between two steps the signal lies. */
  @ParameterizedTest
  @CsvSource({"0", "0.1", "0.25", "0.5", "0.77", "-1000.5"})
  void error_ofTriangularNoise_isIndependentOfTheSignal(double steps) {
    double[] errors = errors(new DitherDesign(BITS, 2, Shape.FLAT, 1), constant(steps));
    assertThat(mean(errors)).isCloseTo(0, within(MEAN_TOLERANCE));
    assertThat(power(errors)).isCloseTo(3 / 12.0, within(POWER_TOLERANCE * 3 / 12));
  }

  /** Without noise the error is the distance to the nearest step. */
  @Test
  void error_withoutNoise_isThatOfRounding() {
    double[] errors = errors(new DitherDesign(BITS, 0, Shape.FLAT, 1), constant(0.3));
    assertThat(errors).containsOnly(errors[0]);
    assertThat(errors[0]).isCloseTo(-0.3, within(1e-9));
  }

  /** Half as wide, it never reaches the next step from one, but always does from between two. */
  @Test
  void error_ofTooNarrowNoise_dependsOnTheSignal() {
    DitherDesign narrow = new DitherDesign(BITS, 1, Shape.FLAT, 1);
    assertThat(power(errors(narrow, constant(0)))).isZero();
    assertThat(power(errors(narrow, constant(0.5)))).isCloseTo(0.25, within(1e-9));
  }

  /** The sum of the squares of (1, -1) is 2, of (1, -2, 1) it is 6. */
  @ParameterizedTest
  @CsvSource({"FLAT, 1", "FIRST_ORDER, 2", "SECOND_ORDER, 6"})
  void error_shaped_hasThePowerOfItsShape(Shape shape, double times) {
    double[] errors = errors(new DitherDesign(BITS, 2, shape, 2), constant(0.3));
    assertThat(power(errors)).isCloseTo(times * 3 / 12, within(POWER_TOLERANCE * times * 3 / 12));
  }

  /** |1 - e^-jw|^2 = 4 sin^2(w/2), to the power of the order; averaged over some 780 blocks. */
  @ParameterizedTest
  @CsvSource({"FLAT, 0", "FIRST_ORDER, 1", "SECOND_ORDER, 2"})
  void error_shaped_hasTheSpectrumOfItsShape(Shape shape, int order) {
    int block = 512;
    double[] errors = errors(new DitherDesign(BITS, 2, shape, 3), constant(0.3));
    for (int bin : new int[] {16, 40, 90, 160, 240}) {
      double w = 2 * Math.PI * bin / block;
      double sum = 0;
      int blocks = FRAMES / block;
      for (int b = 0; b < blocks; b++) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < block; i++) {
          // A Hann window, so that the strong high frequencies do not leak into the low ones.
          double windowed = errors[b * block + i] * (1 - Math.cos(2 * Math.PI * i / block));
          re += windowed * Math.cos(w * i);
          im += windowed * Math.sin(w * i);
        }
        sum += re * re + im * im;
      }
      double density = sum / blocks / (1.5 * block);
      double wanted = 3 / 12.0 * Math.pow(4 * Math.pow(Math.sin(w / 2), 2), order);
      // One deviation of the mean of 780 exponential values is 0.15 dB.
      assertThat(10 * Math.log10(density / wanted)).as("bin %d", bin).isCloseTo(0, within(0.7));
    }
  }

  /** A tone of 0.4 steps vanishes by rounding, and stays in the noise as large as it was. */
  @Test
  void tone_underOneStep_survives() {
    double[] tone = new double[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      tone[i] = 0.4 * STEP * Math.sin(0.1 * i);
    }
    double[] rounded = run(new DitherDesign(BITS, 0, Shape.FLAT, 4), new double[][] {tone})[0];
    double[] dithered = run(new DitherDesign(BITS, 2, Shape.FLAT, 4), new double[][] {tone})[0];
    double found = 0;
    for (int i = 0; i < FRAMES; i++) {
      found += 2 * dithered[i] * Math.sin(0.1 * i) / FRAMES;
    }
    assertThat(power(rounded)).isZero();
    assertThat(found / STEP).isCloseTo(0.4, within(0.01));
  }

  @ParameterizedTest
  @EnumSource(Shape.class)
  void sample_dithered_isAStepOfTheWord(Shape shape) {
    double[] out = run(new DitherDesign(8, 2, shape, 5), new double[][] {constant(999.3)})[0];
    double[] steps = Arrays.stream(out).map(x -> x * 128).toArray();
    assertThat(steps).isEqualTo(Arrays.stream(steps).map(Math::rint).toArray());
  }

  @Test
  void noise_ofTwoChannels_hasNothingInCommon() {
    double[][] silence = {new double[FRAMES], new double[FRAMES]};
    double[][] out = run(new DitherDesign(BITS, 2, Shape.FLAT, 6), silence);
    double product = 0;
    for (int i = 0; i < FRAMES; i++) {
      product += out[0][i] * out[1][i] / (STEP * STEP) / FRAMES;
    }
    assertThat(product).isCloseTo(0, within(4 * 0.25 / Math.sqrt(FRAMES)));
  }

  @ParameterizedTest
  @EnumSource(Shape.class)
  void result_inBlocksOrAfterReset_isTheSame(Shape shape) {
    DitherDesign design = new DitherDesign(BITS, 2, shape, 7);
    double[][] signal = {constant(0.3), constant(-7.7)};
    double[][] whole = run(design, signal);
    double[][] parts = {signal[0].clone(), signal[1].clone()};
    Processor processor = design.newProcessor(Wiring.ofChannels(2));
    processor.process(new double[][] {new double[9], new double[9]}, 0, 9);
    processor.reset();
    for (int from = 0; from < FRAMES; from += 777) {
      processor.process(parts, from, Math.min(from + 777, FRAMES));
    }
    assertThat(parts).isDeepEqualTo(whole);
    double[][] other = run(new DitherDesign(BITS, 2, shape, 8), signal);
    assertThat(Arrays.equals(other[0], whole[0])).isFalse();
  }

  @Test
  void sample_thatIsNoNumber_passesAndLeavesNothingBehind() {
    double[] signal = {Double.NaN, Double.POSITIVE_INFINITY, 0.1, 0.2, 0.3};
    double[] out =
        run(new DitherDesign(BITS, 2, Shape.SECOND_ORDER, 9), new double[][] {signal})[0];
    assertThat(out[0]).isNaN();
    assertThat(out[1]).isInfinite();
    assertThat(out[4]).isCloseTo(0.3, within(10 * STEP));
  }

  @Test
  void design_outsideItsRange_throws() {
    assertThatThrownBy(() -> new DitherDesign(1, 2, Shape.FLAT, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the word must have 2 to 32 bits, but had 1");
    assertThatThrownBy(() -> new DitherDesign(16, Double.NaN, Shape.FLAT, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the noise must be 0 to 4 steps wide, but was NaN");
  }
}
