package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The parts of takes that are meant, in a session: heard alone, and without a click. */
class SessionPartTest {

  private static final int RATE = 48_000;

  /** A part comes and goes in 10 ms. */
  private static final int FADE = RATE / 100;

  /** Doubles are written as they are, so what is left is the arithmetic of some sums. */
  private static final double ROUNDING = 1e-12;

  @TempDir Path folder;

  private double[] render(String text) throws IOException {
    Path out = folder.resolve("mix.wav");
    new SessionRuns(folder, out).render(0, text);
    return Takes.read(out)[0];
  }

  /** A raised cosine, its middle between frames. */
  private static double share(int frame, int from, int to) {
    double inside = Math.min(frame - from, to - 1 - frame) + 0.5;
    return inside >= FADE ? 1 : (1 - Math.cos(Math.PI * inside / FADE)) / 2;
  }

  @Test
  void part_ofATake_isHeardInThatPartOnly() throws IOException {
    double[] a = Takes.noise(30_000, 3);
    double[] b = Takes.noise(30_000, 4);
    Takes.write(folder.resolve("a.wav"), RATE, a);
    Takes.write(folder.resolve("b.wav"), RATE, b);
    double[] mix =
        render(
            """
            chain a {
              take "a.wav" 0:00.2 to 0:00.3
              to mix
            }
            chain b {
              take "b.wav" 0:00.1 to 0:00.4
              to mix
            }
            bus mix {
            }
            """);
    assertThat(mix).hasSize(RATE * 3 / 10);
    double[] expected = new double[mix.length];
    for (int i = 0; i < mix.length; i++) {
      int at = i + RATE / 10;
      boolean isIn = at >= RATE / 5 && at < RATE * 3 / 10;
      expected[i] =
          b[at] * share(at, RATE / 10, RATE * 4 / 10)
              + (isIn ? a[at] * share(at, RATE / 5, RATE * 3 / 10) : 0);
    }
    assertThat(mix).containsExactly(expected, within(ROUNDING));
  }

  /** No step is larger than the steepest of a raised cosine, pi / 2 of its mean. */
  @Test
  void part_fromTheStartOrToTheEndOfItsFile_isNotFadedThere() throws IOException {
    double[] constant = new double[RATE];
    Arrays.fill(constant, 0.25);
    Takes.write(folder.resolve("constant.wav"), RATE, constant);
    String session = "chain a {\n  take \"constant.wav\" %s\n  to mix\n}\nbus mix {\n}\n";
    double largestStep = 0.25 * Math.PI / 2 / FADE * 1.001;
    double[] within = render(session.formatted("0:00.2 to 0:00.7"));
    assertThat(within).hasSize(RATE / 2);
    assertThat(Math.max(within[0], within[within.length - 1])).isLessThan(largestStep);
    for (int i = 1; i < within.length; i++) {
      assertThat(Math.abs(within[i] - within[i - 1])).as("frame %s", i).isLessThan(largestStep);
    }
    assertThat(within[RATE / 4]).isEqualTo(0.25);
    Files.delete(folder.resolve("mix.wav"));
    assertThat(render(session.formatted(""))).containsOnly(0.25);
  }
}
