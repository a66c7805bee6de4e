package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The parts of takes that are meant: what goes into their chains, without a click. */
class SessionPartTest {

  private static final int RATE = 48_000;

  /** A part comes and goes in 10 ms. */
  private static final int FADE = RATE / 100;

  /** Doubles are written as they are, so what is left is the arithmetic of some sums. */
  private static final double ROUNDING = 1e-12;

  @TempDir Path folder;

  private double[] render(String text, Object... more) throws IOException {
    Path out = folder.resolve("mix.wav");
    Files.deleteIfExists(out);
    new SessionRuns(folder, out).render(0, text, more);
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
    assertThat(render(session.formatted(""))).containsOnly(0.25);
  }

  private static final String SESSION =
      """
      chain a {
        take "%s" %s
        to mix
        %s
      }
      bus mix {
      }
      """;

  /** A file that is silent up to the part and ends with it, faded, gives the same sound. */
  @Test
  void tail_ofAPart_soundsOnWithoutTheTakeBehindIt() throws IOException {
    int from = RATE / 5;
    int to = RATE * 3 / 10;
    double[] take = Takes.noise(30_000, 5);
    Arrays.fill(take, 0, from, 0);
    double[] ended = Arrays.copyOf(take, to);
    for (int i = to - FADE; i < to; i++) {
      ended[i] *= share(i, from, to);
    }
    Takes.write(folder.resolve("take.wav"), RATE, take);
    Takes.write(folder.resolve("ended.wav"), RATE, ended);
    String reverb = "reverb decay 0.6 s blend 30 %";
    for (String chosen : List.of("a", "mix")) {
      double[] part =
          render(SESSION.formatted("take.wav", "0:00.2 to 0:00.3", reverb), "--chain", chosen);
      double[] whole = render(SESSION.formatted("ended.wav", "", reverb), "--chain", chosen);
      assertThat(part).as(chosen).hasSize(whole.length - from);
      assertThat(part.length).as(chosen).isGreaterThan(to - from + RATE / 2);
      assertSame(part, whole, from, FADE, part.length);
    }
  }

  @Test
  void part_behindADetector_findsItSettledAsInTheWhole() throws IOException {
    Takes.write(folder.resolve("take.wav"), RATE, Takes.noise(30_000, 5));
    String stage = "compressor threshold -30 dBFS ratio 4:1 attack 5 ms release 90 ms";
    double[] whole = render(SESSION.formatted("take.wav", "", stage), "--chain", "a");
    for (String chosen : List.of("a", "mix")) {
      double[] part =
          render(SESSION.formatted("take.wav", "0:00.2 to 0:00.3", stage), "--chain", chosen);
      assertThat(part).as(chosen).hasSize(RATE / 10);
      assertSame(part, whole, RATE / 5, FADE, part.length - FADE);
    }
  }

  private static void assertSame(double[] part, double[] whole, int shift, int first, int end) {
    for (int i = first; i < end; i++) {
      assertThat(part[i]).as("frame %s", i).isCloseTo(whole[i + shift], within(ROUNDING));
    }
  }
}
