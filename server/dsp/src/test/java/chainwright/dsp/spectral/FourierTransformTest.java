package chainwright.dsp.spectral;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FourierTransformTest {

  /** {@code numpy.fft.rfft([sin(0.7 i + 0.1 i²) for i in range(16)])}, numpy 2.4.6. */
  private static final double[][] NUMPY = {
    {1.6511524243806512, 0},
    {1.7350694335784023, -0.2826637215629124},
    {1.7597242198856287, -0.9921348152096939},
    {0.5990016961105097, -2.1051513450985917},
    {-2.320108624097254, -0.5779303433071661},
    {0.42585275012930934, 3.7764716990716956},
    {0.5173236039810231, -1.159212011541256},
    {-0.6136322078164814, 4.68653005122629},
    {-5.857614167922927, 0},
  };

  @Test
  void forward_ofARow_isWhatNumpyFinds() {
    double[] row = new double[16];
    for (int i = 0; i < row.length; i++) {
      row[i] = Math.sin(0.7 * i + 0.1 * i * i);
    }
    double[] re = new double[9];
    double[] im = new double[9];
    new FourierTransform(16).forward(row, re, im);
    for (int k = 0; k < re.length; k++) {
      assertThat(re[k]).as("bin %d", k).isCloseTo(NUMPY[k][0], within(1e-14));
      assertThat(im[k]).as("bin %d", k).isCloseTo(NUMPY[k][1], within(1e-14));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 8, 64, 2048, 16384})
  void inverse_ofForward_isTheRowAgain(int length) {
    SplittableRandom random = new SplittableRandom(length);
    double[] row = random.doubles(length, -1, 1).toArray();
    double[] back = new double[length];
    FourierTransform transform = new FourierTransform(length);
    double[] re = new double[transform.binCount()];
    double[] im = new double[transform.binCount()];
    transform.forward(row, re, im);
    transform.inverse(re, im, back);
    assertThat(back).containsExactly(row, within(1e-14));
  }

  /** The power of a row is that of its spectrum divided by the length (Parseval). */
  @Test
  void forward_ofARow_keepsItsPower() {
    int length = 1024;
    double[] row = new SplittableRandom(3).doubles(length, -1, 1).toArray();
    FourierTransform transform = new FourierTransform(length);
    double[] re = new double[transform.binCount()];
    double[] im = new double[transform.binCount()];
    transform.forward(row, re, im);
    double spectrum = 0;
    double samples = 0;
    for (int k = 0; k < re.length; k++) {
      boolean isAlone = k == 0 || k == re.length - 1;
      spectrum += (isAlone ? 1 : 2) * (re[k] * re[k] + im[k] * im[k]) / length;
    }
    for (double sample : row) {
      samples += sample * sample;
    }
    assertThat(spectrum).isCloseTo(samples, within(1e-12 * samples));
  }

  @Test
  void transform_ofNoPowerOfTwo_throws() {
    assertThatThrownBy(() -> new FourierTransform(12))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the length must be a power of two from 4 on, but was 12");
  }
}
