package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlotCommandTest {

  private static final String TEXT =
      """
      chain lead {
        high-pass 100 Hz 12 dB/oct curve bilinear
        compressor threshold -20 dBFS ratio 4:1 attack 10 ms release 100 ms knee 0 dB  as glue
        saturation symmetric drive 6 dB
      }

      chain plain {
        gain -6 dB
      }
      """;

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void write() throws IOException {
    file = Files.writeString(folder.resolve("a.chain"), TEXT);
  }

  /**
   * At its cutoff a Butterworth filter is 10 lg(1/2) = -3.0103 dB down and 2nd order high-pass
   * turns by a quarter of a turn; the bilinear transform with pre-warping keeps both there. Source:
   * S. Butterworth, "On the Theory of Filter Amplifiers", 1930, from memory; computed from |H|^2 =
   * 1 / (1 + (fc/f)^2n).
   */
  @Test
  void csv_highPassAtItsCutoff_isHalfThePower() {
    double[] row = row("--chain", "lead", "--stage", "1", "--at", "100");
    assertThat(row[0]).isEqualTo(100);
    assertThat(row[1]).isCloseTo(10 * Math.log10(0.5), within(1e-9));
    assertThat(row[2]).isCloseTo(Math.PI / 2, within(1e-9));
    assertThat(row[3]).isPositive();
  }

  /** A hard knee: (in - threshold) / ratio above the threshold; the definition of the ratio. */
  @Test
  void csv_compressorByLabel_followsItsRatio() {
    assertThat(row("--chain", "lead", "--stage", "glue", "--at", "-8"))
        .containsExactly(new double[] {-8, -17}, within(1e-9));
  }

  @Test
  void csv_places_standInRisingOrderUnderTheirNames() {
    assertThat(plot("--chain", "plain", "--at", "1000,80,80", "--format", "csv").out().lines())
        .first()
        .isEqualTo("frequency_hz,magnitude_db,phase_rad,group_delay_s");
    assertThat(row("--chain", "plain", "--at", "1000,80,80"))
        .containsExactly(new double[] {80, -6, 0, 0}, within(1e-12));
  }

  @Test
  void json_chain_holdsTheSameDigits() {
    CommandRun run = plot("--chain", "lead", "--at", "80", "--format", "json");
    JsonObject all = JsonParser.parseString(run.out()).getAsJsonObject();
    assertThat(all.get("axis").getAsString()).isEqualTo("frequency");
    assertThat(all.get("sampleRateHz").getAsDouble()).isEqualTo(48_000);
    JsonArray numbers = all.getAsJsonArray("rows").get(0).getAsJsonArray();
    double[] row = row("--chain", "lead", "--at", "80");
    for (int i = 0; i < row.length; i++) {
      assertThat(numbers.get(i).getAsDouble()).isEqualTo(row[i]);
    }
  }

  /** An odd non-linearity makes no even harmonics, by symmetry. */
  @Test
  void csv_symmetricSaturation_hasNoEvenHarmonics() {
    double third = row("--chain", "lead", "--stage", "3", "--at", "3")[1];
    double second = row("--chain", "lead", "--stage", "3", "--at", "2")[1];
    assertThat(second).isLessThan(-200);
    assertThat(third).isBetween(-100.0, -20.0);
  }

  @Test
  void drawings_areText_orPictures() {
    assertThat(plot("--chain", "lead").out()).contains("lead").doesNotContain("frequency_hz");
    assertThat(plot("--chain", "lead", "--format", "svg").out()).startsWith("<svg");
    assertThat(plot("--chain", "lead", "--stage", "glue").code()).isZero();
    assertThat(plot("--chain", "lead", "--stage", "3").code()).isZero();
  }

  @Test
  void output_isWrittenOnce_unlessForced() throws IOException {
    Path target = folder.resolve("a.csv");
    assertThat(plot("--chain", "plain", "--at", "80", "-o", target).code()).isZero();
    String first = Files.readString(target);
    CommandRun again = plot("--chain", "lead", "--at", "80", "-o", target);
    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err()).contains("exists already");
    assertThat(target).hasContent(first);
    assertThat(plot("--chain", "lead", "--at", "80", "-o", target, "--force").code()).isZero();
    assertThat(Files.readString(target)).isNotEqualTo(first);
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactlyInAnyOrder(file, target);
    }
  }

  @Test
  void plot_badInput_isRefusedWithAReason() throws IOException {
    Path latin = folder.resolve("latin.chain");
    Files.write(latin, "chain a { } # caf\u00e9".getBytes(StandardCharsets.ISO_8859_1));
    Path binary = folder.resolve("b.chain");
    Files.write(binary, new byte[] {1, 0, 2});
    Path target = folder.resolve("never.csv");
    List<List<Object>> cases =
        List.of(
            List.of("does not exist", folder.resolve("gone.chain")),
            List.of("is a folder", folder),
            List.of("is not written in UTF-8", latin),
            List.of("is no text", binary),
            List.of("name one of the chains by `--chain`: `lead`, `plain`", file),
            List.of("there is no chain `led`", file, "--chain", "led"),
            List.of("there is no stage `9`", file, "--chain", "lead", "--stage", "9"),
            List.of("there is no stage `0`", file, "--chain", "lead", "--stage", "0"),
            List.of("its stages are 1 high-pass", file, "--chain", "lead", "--stage", "hi"),
            List.of("name it by `--stage`", file, "--chain", "lead", "--axis", "level"),
            List.of(
                "does not react to level",
                file,
                "--chain",
                "lead",
                "--stage",
                "1",
                "--axis",
                "level"),
            List.of(
                "adds no harmonics",
                file,
                "--chain",
                "lead",
                "--stage",
                "1",
                "--axis",
                "harmonics"),
            List.of("between 0 Hz and 24000 Hz", file, "--chain", "lead", "--at", "30000"),
            List.of("between 0 Hz and 24000 Hz", file, "--chain", "lead", "--at", "NaN"),
            List.of("whole number", file, "--chain", "lead", "--stage", "3", "--at", "1.5"),
            List.of("--at", file, "--chain", "lead", "--at", "low"),
            List.of("picks numbers", file, "--chain", "lead", "--at", "80", "--format", "svg"),
            List.of("--format", file, "--chain", "lead", "--format", "png"));
    for (List<Object> one : cases) {
      Object[] arguments =
          Stream.concat(one.subList(1, one.size()).stream(), Stream.of("-o", target)).toArray();
      CommandRun run = plot(false, arguments);
      assertThat(run.err()).as("%s", one).contains(one.get(0).toString());
      assertThat(run.code()).as("%s", one).isEqualTo(2);
      assertThat(run.out()).isEmpty();
      assertThat(target).doesNotExist();
    }
  }

  private double[] row(Object... arguments) {
    CommandRun run = plot(arguments);
    assertThat(run.code()).as(run.err()).isZero();
    return Stream.of(run.out().lines().skip(1).findFirst().orElseThrow().split(",", -1))
        .mapToDouble(Double::parseDouble)
        .toArray();
  }

  private CommandRun plot(Object... arguments) {
    return plot(true, arguments);
  }

  private CommandRun plot(boolean isOfFile, Object... arguments) {
    Stream<Object> head = isOfFile ? Stream.of("plot", file) : Stream.of("plot");
    return CommandRun.of(Stream.concat(head, Stream.of(arguments)).toArray());
  }
}
