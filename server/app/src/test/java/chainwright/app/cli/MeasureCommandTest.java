package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioFormat;
import chainwright.app.audiofile.AudioWriter;
import chainwright.app.audiofile.FileKind;
import chainwright.app.audiofile.SampleKind;
import chainwright.app.audiofile.Speaker;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tones whose readings are known; the loudness of real material is checked with the meters. */
class MeasureCommandTest {

  private static final double RATE_HZ = 48_000;

  @TempDir Path folder;

  private Path tone(String name, List<Speaker> speakers, double... peakDbfs) throws IOException {
    Path file = folder.resolve(name);
    AudioFormat format =
        new AudioFormat(FileKind.WAVE, RATE_HZ, peakDbfs.length, speakers, SampleKind.ofFloat(64));
    double[][] block = new double[peakDbfs.length][(int) (5 * RATE_HZ)];
    for (int c = 0; c < peakDbfs.length; c++) {
      double amplitude = Math.pow(10, peakDbfs[c] / 20);
      for (int n = 0; n < block[c].length; n++) {
        block[c][n] = amplitude * Math.sin(2 * Math.PI * 1000 * n / RATE_HZ);
      }
    }
    try (AudioWriter writer = AudioFiles.create(file, format, false)) {
      writer.write(block, 0, block[0].length);
      writer.finish();
    }
    return file;
  }

  private static JsonObject recording(Path file) {
    CommandRun run = CommandRun.of("measure", "--format", "json", file);
    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    return JsonParser.parseString(run.out())
        .getAsJsonObject()
        .getAsJsonArray("recordings")
        .get(0)
        .getAsJsonObject();
  }

  /** Source: EBU Tech 3341, section 2.9 and table 1, case 1: a stereo tone reads its peak level. */
  @Test
  void json_stereoTone_readsItsLevel() throws IOException {
    JsonObject one = recording(tone("tone.wav", Speaker.usual(2), -23, -23));
    assertThat(one.get("integratedLufs").getAsDouble()).isCloseTo(-23, within(0.1));
    assertThat(one.get("rangeLu").getAsDouble()).isCloseTo(0, within(0.01));
    assertThat(one.get("correlation").getAsDouble()).isCloseTo(1, within(1e-9));
    assertThat(one.get("lengthFrames").getAsLong()).isEqualTo(240_000);
    JsonObject right = one.getAsJsonArray("channels").get(1).getAsJsonObject();
    assertThat(right.get("name").getAsString()).isEqualTo("2 right");
    assertThat(right.get("rmsDbfs").getAsDouble()).isCloseTo(-23, within(1e-6));
    assertThat(one.getAsJsonArray("cautions"))
        .singleElement()
        .asString()
        .contains("shorter than a minute");
  }

  /**
   * Source: EBU Tech 3341, table 1, case 6: channels of these levels read -23 LUFS; low-frequency
   * effects count for nothing.
   */
  @Test
  void json_fivePointOneWhateverItsSurroundsAreCalled_isWeighted() throws IOException {
    for (Speaker[] surrounds :
        new Speaker[][] {
          {Speaker.BACK_LEFT, Speaker.BACK_RIGHT}, {Speaker.SIDE_LEFT, Speaker.SIDE_RIGHT}
        }) {
      List<Speaker> speakers =
          List.of(
              Speaker.FRONT_LEFT,
              Speaker.FRONT_RIGHT,
              Speaker.FRONT_CENTRE,
              Speaker.LOW_FREQUENCY,
              surrounds[0],
              surrounds[1]);
      Path file = tone(surrounds[0] + ".wav", speakers, -28, -28, -24, -6, -30, -30);
      assertThat(recording(file).get("integratedLufs").getAsDouble()).isCloseTo(-23, within(0.1));
    }
  }

  @Test
  void csv_holdsTheNumbersOfJson() throws IOException {
    Path file = tone("one, \"two\".wav", Speaker.usual(1), -0.5);
    CommandRun run = CommandRun.of("measure", "--format", "csv", file);
    List<String> lines = run.out().lines().toList();
    assertThat(lines).hasSize(2);
    String quoted = '"' + file.toString().replace("\"", "\"\"") + '"';
    assertThat(lines.get(1)).startsWith(quoted + ",1 centre,48000,5,240000,0,");
    List<String> names = List.of(lines.get(0).split(",", -1));
    List<String> cells = List.of(lines.get(1).substring(quoted.length() - 4).split(",", -1));
    JsonObject one = recording(file);
    JsonObject channel = one.getAsJsonArray("channels").get(0).getAsJsonObject();
    for (int i = 2; i < names.size(); i++) {
      JsonObject holder = one.has(names.get(i)) ? one : channel;
      String expected =
          holder.get(names.get(i)).isJsonNull() ? "" : holder.get(names.get(i)).getAsString();
      assertThat(cells.get(i)).as(names.get(i)).isEqualTo(expected);
    }
  }

  @Test
  void text_peakOverMinusOne_isCautioned() throws IOException {
    Path loud = tone("loud.wav", Speaker.usual(1), 0.5);
    assertThat(CommandRun.of("measure", loud).out())
        .contains("Caution: the true peak of 0.51 dBTP lies above -1 dBTP")
        .contains("Caution: channel 1 centre reaches full scale:")
        .doesNotContain("is clipped");
    Path soft = tone("soft.wav", Speaker.usual(1), -12);
    assertThat(CommandRun.of("measure", soft).out()).doesNotContain("lies above", "full scale");
  }

  @Test
  void files_ofWhichOneIsNone_areMeasuredButForIt() throws IOException {
    Path good = tone("good.wav", Speaker.usual(1), -12);
    Path text = Files.writeString(folder.resolve("notes.wav"), "Platform two, at six.");
    CommandRun run = CommandRun.of("measure", good, text, folder.resolve("gone.wav"));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).startsWith(good + "\n");
    assertThat(run.err().lines())
        .hasSize(2)
        .anyMatch(line -> line.endsWith("notes.wav` is a text, not a recording"))
        .anyMatch(line -> line.endsWith("gone.wav` does not exist"));
  }

  @Test
  void file_withoutSamples_hasNoReadings() throws IOException {
    Path file = folder.resolve("empty.wav");
    AudioFormat format = AudioFormat.of(FileKind.WAVE, RATE_HZ, 1, SampleKind.ofInteger(16));
    try (AudioWriter writer = AudioFiles.create(file, format, false)) {
      writer.finish();
    }
    JsonObject one = recording(file);
    assertThat(one.get("integratedLufs").isJsonNull()).isTrue();
    assertThat(one.get("lengthFrames").getAsLong()).isZero();
    assertThat(CommandRun.of("measure", file).out()).contains("integrated loudness");
  }
}
