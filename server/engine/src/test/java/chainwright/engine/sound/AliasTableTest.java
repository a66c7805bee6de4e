package chainwright.engine.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.engine.WrittenChain;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The table of the reference that says how loud what folds back is. */
class AliasTableTest {

  private static final Path REFERENCE = Path.of("../../grammar/reference.md");
  private static final String HEAD = "| folded back [dBFS]";
  private static final String LEAST = "under ";

  private static final int RATE_HZ = 48_000;
  private static final int TONE_HZ = 5_000;
  private static final int HIGHEST_HZ = 20_000;

  /** All that folds back of a tone of 5 kHz lies on multiples of 1 kHz, whole in this window. */
  private static final int STEP_HZ = 1_000;

  private static final int WINDOW = 4_800;

  /** The cells are whole decibels. */
  private static final double ROUNDING_DB = 0.6;

  private static List<String> cells(String row) {
    return Stream.of(row.split("\\|")).map(String::strip).filter(cell -> !cell.isEmpty()).toList();
  }

  static List<Arguments> cells() throws IOException {
    List<String> lines = Files.readAllLines(REFERENCE);
    int head = 0;
    while (!lines.get(head).startsWith(HEAD)) {
      head++;
    }
    List<String> factors = cells(lines.get(head));
    List<Arguments> all = new ArrayList<>();
    for (int i = head + 2; lines.get(i).startsWith("|"); i++) {
      List<String> row = cells(lines.get(i));
      assertThat(row).hasSameSizeAs(factors);
      for (int c = 1; c < row.size(); c++) {
        String stage = row.get(0).replace("`", "") + " oversampling " + factors.get(c);
        all.add(Arguments.of(stage, row.get(c)));
      }
    }
    return all;
  }

  @ParameterizedTest
  @MethodSource("cells")
  void stage_fullScaleToneOf5Kilohertz_foldsBackAsTheTableSays(String stage, String cell) {
    double levelDbfs = strongestDbfs(stage);
    if (cell.startsWith(LEAST)) {
      assertThat(levelDbfs).isLessThan(number(cell.substring(LEAST.length())));
    } else {
      assertThat(levelDbfs).isCloseTo(number(cell), within(ROUNDING_DB));
    }
  }

  private static double number(String cell) {
    return Double.parseDouble(cell.replace('−', '-'));
  }

  /** The strongest line up to 20 kHz that is no harmonic, once the filters have settled. */
  private static double strongestDbfs(String stage) {
    ProcessorDesign design = Rendered.design(WrittenChain.pathOf(stage));
    double[] channel = new double[2 * RATE_HZ];
    for (int i = 0; i < channel.length; i++) {
      channel[i] = Math.sin(2 * Math.PI * ((long) i * TONE_HZ % RATE_HZ) / RATE_HZ);
    }
    design.newProcessor(Wiring.ofChannels(1)).process(new double[][] {channel}, 0, channel.length);
    double[] end = Arrays.copyOfRange(channel, channel.length - WINDOW, channel.length);
    double strongest = 0;
    for (int hertz = STEP_HZ; hertz <= HIGHEST_HZ; hertz += STEP_HZ) {
      strongest = hertz % TONE_HZ == 0 ? strongest : Math.max(strongest, amplitude(end, hertz));
    }
    return 20 * Math.log10(strongest);
  }

  private static double amplitude(double[] window, int hertz) {
    double re = 0;
    double im = 0;
    for (int i = 0; i < window.length; i++) {
      double angle = 2 * Math.PI * ((long) i * hertz % RATE_HZ) / RATE_HZ;
      re += window[i] * Math.cos(angle);
      im += window[i] * Math.sin(angle);
    }
    return 2 * Math.hypot(re, im) / window.length;
  }
}
