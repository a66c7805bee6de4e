package chainwright.app.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The drawings as they were when last looked at; {@code -Dgolden.update=true} rewrites them, to be
 * looked at again before they are committed.
 */
class PlotGoldenTest {

  private static final Path FOLDER = Path.of("src/test/resources/plot");

  static Stream<String> names() {
    return SamplePlots.all().keySet().stream();
  }

  @ParameterizedTest
  @MethodSource("names")
  void svg_sample_asLookedAt(String name) throws IOException {
    check(name + ".svg", SvgPlot.render(plot(name)));
  }

  @ParameterizedTest
  @MethodSource("names")
  void text_sample_asLookedAt(String name) throws IOException {
    check(name + ".txt", TextPlot.render(plot(name)));
  }

  @ParameterizedTest
  @MethodSource("names")
  void ascii_sample_asLookedAt(String name) throws IOException {
    check(name + ".ascii.txt", TextPlot.render(plot(name), TextStyle.ASCII));
  }

  private static Plot plot(String name) {
    return Objects.requireNonNull(SamplePlots.all().get(name));
  }

  private static void check(String file, String drawn) throws IOException {
    Path golden = FOLDER.resolve(file);
    if (Boolean.getBoolean("golden.update")) {
      Files.createDirectories(FOLDER);
      Files.writeString(golden, drawn);
    }
    assertThat(drawn).isEqualTo(Files.readString(golden));
  }
}
