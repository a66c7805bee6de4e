package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.WrittenChain;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The last line of a chain that is delivered in whole numbers. */
class DitherSoundTest {

  private static final int FRAMES = 100_000;

  /**
   * The error of triangular noise two steps wide has the power of 3 steps²/12, raised by 2 and 6 by
   * the shapes. Source: Lipshitz, Wannamaker and Vanderkooy, JAES 40(5), 1992; from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "dither 16 bit, 16, 3",
    "dither 24 bit, 24, 3",
    "dither 16 bit noise-shaping first-order, 16, 6",
    "dither 16 bit noise-shaping second-order, 16, 18",
    "dither 16 bit dither-level 0, 16, 1",
  })
  void dither_ofNoise_leavesWholeStepsAndTheErrorOfItsKind(
      String line, int bits, double twelfthsOfAStep) {
    ProcessorDesign design = Rendered.design(WrittenChain.pathOf(line));
    double[][] signal = Rendered.noise(2, FRAMES, 3);
    double[][] out =
        Rendered.inBlocks(design.newProcessor(Wiring.ofChannels(2)), signal, List.of(1, 500));
    double step = Math.pow(2, 1 - bits);
    double power = 0;
    for (int i = 0; i < FRAMES; i++) {
      double steps = out[0][i] / step;
      assertThat(steps).isEqualTo(Math.rint(steps));
      power += Math.pow((out[0][i] - signal[0][i]) / step, 2) / FRAMES;
    }
    // Ten times the spread of the mean of 10⁵ squares.
    assertThat(power).isCloseTo(twelfthsOfAStep / 12, within(0.03 * twelfthsOfAStep / 12));
  }
}
