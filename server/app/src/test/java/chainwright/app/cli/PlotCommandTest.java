package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
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
  void json_definitions_nameEveryColumn() {
    for (String stage : List.of("1", "glue", "3")) {
      JsonObject all =
          JsonParser.parseString(
                  plot("--chain", "lead", "--stage", stage, "--format", "json").out())
              .getAsJsonObject();
      JsonObject definitions = all.getAsJsonObject("definitions");
      for (JsonElement column : all.getAsJsonArray("columns")) {
        JsonObject definition = definitions.getAsJsonObject(column.getAsString());
        assertThat(definition.get("is").getAsString()).isNotBlank();
        assertThat(definition.get("unit").getAsString()).isNotNull();
      }
    }
  }

  /**
   * A memoryless odd curve: the third harmonic of a weak tone rises by 3 dB for each dB of the
   * tone, so 2 dB relative to it; a lone cubic term, computed.
   */
  @Test
  void harmonics_toneLevel_changesThem() {
    double loud = row("--chain", "lead", "--stage", "3", "--at", "3", "--tone-level", "-40")[1];
    double soft = row("--chain", "lead", "--stage", "3", "--at", "3", "--tone-level", "-41")[1];
    assertThat(loud - soft).isCloseTo(3, within(0.02));
  }

  /** The lines of the file, what is bypassed counted, a preset as one of them. */
  @Test
  void stage_number_countsTheLinesOfTheFile() throws IOException {
    Path song =
        Files.writeString(
            folder.resolve("song.chain"),
            """
            preset body {
              low-shelf 120 Hz +2 dB
              bell 400 Hz -3 dB Q 1
            }

            chain lead {
              high-pass 80 Hz 12 dB/oct
              bell 1 kHz +4 dB Q 1  as honk  bypassed
              apply body
              parallel {
                path "dry"
                path "bright" -6 dB { high-shelf 8 kHz +6 dB }
              }
              compressor threshold -20 dBFS ratio 4:1 {
                side-chain { high-pass 150 Hz 6 dB/oct }
              }
              multiband {
                band below 200 Hz { gain -1 dB }
                band above 200 Hz
              }
              during 1:02 to 1:03.5 { bell 3 kHz -2 dB Q 3 }
            }
            """);
    List<List<String>> cases =
        List.of(
            List.of("1", "high-pass"),
            List.of("2", "bell"),
            List.of("honk", "bell"),
            List.of("3", "apply body"),
            List.of("3.1", "low-shelf"),
            List.of("3.2", "bell"),
            List.of("4", "parallel"),
            List.of("4.1", "path \"dry\""),
            List.of("4.2", "path \"bright\""),
            List.of("4.2.1", "high-shelf"),
            List.of("5", "compressor"),
            List.of("5.1", "side-chain"),
            List.of("5.1.1", "high-pass"),
            List.of("6.1", "band below 200 Hz"),
            List.of("6.1.1", "gain"),
            List.of("7", "during 1:02 to 1:03.5"),
            List.of("7.1", "bell"));
    for (List<String> one : cases) {
      CommandRun run = plotOf(song, "--stage", one.get(0), "--format", "json");
      assertThat(run.code()).as(run.err()).isZero();
      JsonObject all = JsonParser.parseString(run.out()).getAsJsonObject();
      assertThat(all.get("stage").getAsString()).as(one.get(0)).isEqualTo(one.get(1));
      assertThat(run.err().contains("is bypassed"))
          .isEqualTo(List.of("2", "honk").contains(one.get(0)));
    }
    double[] bypassed = rowOf(song, "--stage", "2", "--at", "1000");
    assertThat(bypassed[1]).isCloseTo(4, within(1e-6));
  }

  @Test
  void png_stage_isAPictureOfTheSameSize() throws IOException {
    Path target = folder.resolve("a.png");
    assertThat(plot("--chain", "lead", "--stage", "1", "-o", target).code()).isZero();
    BufferedImage image = ImageIO.read(target.toFile());
    assertThat(image.getWidth()).isEqualTo(1120);
    assertThat(plot("--chain", "lead", "--format", "png").err()).contains("name its file by `-o`");
  }

  /** What is read is never written to, not even by force. */
  @Test
  void output_thatIsAnInput_isRefused() throws IOException {
    Path preset = Files.writeString(folder.resolve("p.chain"), "preset p {\n  gain -6 dB\n}\n");
    Path song =
        Files.writeString(
            folder.resolve("s.chain"), "import \"p.chain\"\n\nchain a {\n  apply p\n}\n");
    for (Path input : List.of(song, preset)) {
      String before = Files.readString(input);
      CommandRun run = plotOf(song, "--format", "csv", "-o", input, "--force");
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).contains("is what is read here");
      assertThat(input).hasContent(before);
    }
  }

  @Test
  void output_ending_choosesTheFormat() throws IOException {
    for (String ending : List.of("txt", "svg", "csv", "json")) {
      Path target = folder.resolve("a." + ending);
      assertThat(plot("--chain", "plain", "-o", target).code()).isZero();
      assertThat(Files.readString(target))
          .isEqualTo(
              plot("--chain", "plain", "--format", ending.equals("txt") ? "text" : ending).out());
    }
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
            List.of(
                "its stages are\n  1 High-pass filter 100 Hz",
                file,
                "--chain",
                "lead",
                "--stage",
                "hi"),
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
            List.of("must be a number without a unit", file, "--chain", "lead", "--at", "NaN"),
            List.of("whole number", file, "--chain", "lead", "--stage", "3", "--at", "1.5"),
            List.of("--at", file, "--chain", "lead", "--at", "low"),
            List.of("picks numbers", file, "--chain", "lead", "--at", "80", "--format", "svg"),
            List.of("--format", file, "--chain", "lead", "--format", "jpeg"),
            List.of("axis of harmonics", file, "--chain", "lead", "--tone", "80"),
            List.of(
                "`--tone` must lie between",
                file,
                "--chain",
                "lead",
                "--stage",
                "3",
                "--tone",
                "30000"));
    for (List<Object> one : cases) {
      Object[] arguments =
          Stream.concat(one.subList(1, one.size()).stream(), Stream.of("-o", target)).toArray();
      CommandRun run = plotOf(arguments);
      assertThat(run.err()).as("%s", one).contains(one.get(0).toString());
      assertThat(run.code()).as("%s", one).isEqualTo(2);
      assertThat(run.out()).isEmpty();
      assertThat(target).doesNotExist();
    }
  }

  private double[] row(Object... arguments) {
    return numbers(plot(arguments));
  }

  private static double[] numbers(CommandRun run) {
    assertThat(run.code()).as(run.err()).isZero();
    return Stream.of(run.out().lines().skip(1).findFirst().orElseThrow().split(",", -1))
        .mapToDouble(Double::parseDouble)
        .toArray();
  }

  private static double[] rowOf(Path of, Object... arguments) {
    return numbers(plotOf(Stream.concat(Stream.of(of), Stream.of(arguments)).toArray()));
  }

  private CommandRun plot(Object... arguments) {
    return plotOf(Stream.concat(Stream.of(file), Stream.of(arguments)).toArray());
  }

  private static CommandRun plotOf(Object... arguments) {
    return CommandRun.of(Stream.concat(Stream.of("plot"), Stream.of(arguments)).toArray());
  }
}
