package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The numbers over time, as `plot` writes them. */
class PlotTimeTest {

  private static final String TEXT =
      """
      bus hall {
        reverb 1.4 s bass-ratio 1.5 treble-ratio 0.5 pre-delay 50 ms
        echo 250 ms feedback 50 %
        echo 250 ms feedback 50 % blend 25 %
        compressor threshold -20 dBFS ratio 4:1 attack 10 ms release 100 ms knee 0 dB
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
   * The times by the line from -5 to -35 dB, within 5 %, the difference that is just heard. Source:
   * ISO 3382-1, T30 and Annex A, from memory.
   */
  @ParameterizedTest
  @CsvSource({"1, 1.4", "2, 2.1", "3, 0.7"})
  void csv_reverb_fallsInItsDecayInEachBand(int column, double seconds) {
    List<double[]> rows = rows(plot("1", "--format", "csv"));
    double[] from = rows.stream().filter(row -> row[column] <= -5).findFirst().orElseThrow();
    double[] to = rows.stream().filter(row -> row[column] <= -35).findFirst().orElseThrow();
    double fallSeconds = 60 * (to[0] - from[0]) / (from[column] - to[column]);
    assertThat(fallSeconds).isCloseTo(seconds, within(0.05 * seconds));
    assertThat(rows).filteredOn(row -> row[0] < 0.05).allMatch(row -> row[column] == 0);
  }

  @Test
  void csv_reverbAtATime_liesOnItsCurve() {
    List<double[]> rows = rows(plot("1", "--at", "0.7,0.01"));
    assertThat(rows.get(0)).containsExactly(0.01, 0, 0, 0);
    // 50 ms and the ways through the room before half a decay of 1.4 s.
    assertThat(rows.get(1)[1]).isBetween(-30.0, -25.0);
  }

  /**
   * Each repeat is softer by the feedback, 20 log10 0.5; blended by 25 %, 20 log10 0.25 besides.
   */
  @Test
  void csv_echo_isARowARepeatEachSofterByTheFeedback() {
    List<double[]> rows = rows(plot("2", "--format", "csv"));
    List<double[]> blended = rows(plot("3", "--format", "csv"));
    assertThat(rows).hasSize(10);
    for (int n = 0; n < 10; n++) {
      double level = 20 * n * Math.log10(0.5);
      assertThat(rows.get(n))
          .containsExactly(new double[] {0.25 * (n + 1), level, level, level}, within(1e-9));
    }
    double dry = 20 * Math.log10(0.75);
    assertThat(blended.get(0)).containsExactly(new double[] {0, dry, dry, dry}, within(1e-9));
    assertThat(blended.get(1)[1]).isCloseTo(20 * Math.log10(0.25), within(1e-9));
  }

  /**
   * From 10 dB below the threshold to 10 dB above: a ratio of 4:1 takes 7.5 dB, of which 63 % are
   * gone after the attack. Source: the definitions of ratio and attack.
   */
  @Test
  void csv_compressorOverTime_isGoneBy63PercentAfterTheAttack() {
    List<double[]> rows = rows(plot("4", "--axis", "time", "--at", "0,0.01"));
    assertThat(rows.get(0)[1]).isCloseTo(0, within(0.05));
    assertThat(rows.get(1)[1]).isCloseTo(-7.5 * (1 - Math.exp(-1)), within(0.05));
  }

  @ParameterizedTest
  @ValueSource(strings = {"1", "2", "3"})
  void axis_ofAReverbOrAnEcho_isTimeWithoutBeingAskedFor(String stage) {
    JsonObject all =
        JsonParser.parseString(plot(stage, "--format", "json").out()).getAsJsonObject();
    assertThat(all.get("axis").getAsString()).isEqualTo("time");
    JsonObject definitions = all.getAsJsonObject("definitions");
    for (JsonElement column : all.getAsJsonArray("columns")) {
      assertThat(definitions.getAsJsonObject(column.getAsString()).get("is").getAsString())
          .isNotBlank();
    }
  }

  /** The octave of 4 kHz is not left whole by a rate of 8 kHz. */
  @Test
  void csv_atALowRate_hasNoHighOctave() throws IOException {
    Files.writeString(file, "session \"s\" { sample-rate 8 kHz }\n\n" + TEXT);
    assertThat(plot("1", "--format", "csv").out()).startsWith("time_s,level_db,low_level_db\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "5 --axis time | has neither attack and release nor a decay",
        "2 --at 1      | at its repeats alone",
        "1 --at -1     | between 0 s and 600 s",
        "1 --at 601    | between 0 s and 600 s",
        "1 --tone 100  | for the axis of harmonics",
      })
  void plot_whatCannotBe_isRefusedWithAReason(String arguments, String reason) {
    CommandRun run = plot((Object[]) arguments.split(" ", -1));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains(reason);
    assertThat(run.out()).isEmpty();
  }

  private CommandRun plot(Object... stageAndMore) {
    return CommandRun.of(
        Stream.concat(Stream.of("plot", file, "--stage"), Stream.of(stageAndMore)).toArray());
  }

  private static List<double[]> rows(CommandRun run) {
    assertThat(run.code()).as(run.err()).isZero();
    return run.out()
        .lines()
        .skip(1)
        .map(row -> Stream.of(row.split(",", -1)).mapToDouble(Double::parseDouble).toArray())
        .toList();
  }
}
