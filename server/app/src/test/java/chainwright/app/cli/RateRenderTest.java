package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Renders whose file has another sample rate than the takes. */
class RateRenderTest {

  private static final int RATE = 48_000;
  private static final int FRAMES = 30_001;

  /** Of a tone in the pass band, whose ripple lies 150 dB down. */
  private static final double RIPPLE = 1e-7;

  @TempDir Path folder;
  private Path out;
  private SessionRuns runs;

  @BeforeEach
  void writeTakes() throws IOException {
    Takes.write(folder.resolve("a.wav"), RATE, tone(RATE, FRAMES));
    Takes.write(folder.resolve("b.wav"), 44_100, tone(44_100, 27_564));
    out = folder.resolve("out.wav");
    runs = new SessionRuns(folder, out);
  }

  private static double[] tone(double rateHz, int frames) {
    double[] tone = new double[frames];
    Arrays.setAll(tone, n -> 0.3 * Math.sin(2 * Math.PI * 997 * n / rateHz));
    return tone;
  }

  private static String lines(String... lines) {
    return String.join("\n", lines) + "\n";
  }

  private static String chain(String stages) {
    return "chain c {\n  take \"a.wav\"\n" + stages + "\n}\n";
  }

  @ParameterizedTest
  @CsvSource({"44100", "96kHz", "8000", "384000", "48000", "47999"})
  void tone_atAnotherRate_hasItsTimeLevelAndLength(String rate) throws IOException {
    runs.render(0, chain("polarity inverted"), "--rate", rate);
    double hertz = rate.endsWith("kHz") ? 96_000 : Double.parseDouble(rate);
    checkTone(-1, hertz, (int) Math.ceil(FRAMES * hertz / RATE));
  }

  @Test
  void stages_aroundConversions_areInTime() throws IOException {
    CommandRun run =
        runs.render(
            0,
            chain(
                lines(
                    "limiter ceiling 0 dBFS look-ahead 5 ms",
                    "sample-rate-conversion 96 kHz",
                    "limiter ceiling 0 dBFS look-ahead 3 ms",
                    "polarity inverted")),
            "--rate",
            "44.1kHz");
    checkTone(-1, 44_100, 27_564);
    assertThat(run.out()).contains("0.625 s, 1 channel, 44100 Hz, 64 bit float");
  }

  private void checkTone(double factor, double hertz, int frames) throws IOException {
    try (AudioReader reader = AudioFiles.open(out)) {
      assertThat(reader.format().sampleRateHz()).isEqualTo(hertz);
      assertThat(reader.frames()).isEqualTo(frames);
    }
    double[] rendered = Takes.read(out)[0];
    double[] wanted = tone(hertz, frames);
    int edge = (int) (hertz / 20);
    for (int n = edge; n < frames - edge; n++) {
      assertThat(rendered[n]).isCloseTo(factor * wanted[n], within(RIPPLE));
    }
  }

  @Test
  void stage_behindAConversion_worksAtItsRate() throws IOException {
    runs.render(
        0,
        chain(
            lines(
                "sample-rate-conversion 96 kHz", "delay 7 samples", "gain -6.020599913279624 dB")));
    double[] late = Takes.read(out)[0];
    runs.render(0, chain("sample-rate-conversion 96 kHz"), "--force");
    double[] plain = Takes.read(out)[0];
    for (int n = 7; n < plain.length; n++) {
      assertThat(late[n]).isCloseTo(plain[n - 7] / 2, within(1e-12));
    }
  }

  @Test
  void dither_atTheEnd_comesBehindTheLastConversionAndTheGain() throws IOException {
    runs.render(
        0,
        chain("gain 3 dB\nsample-rate-conversion 96 kHz\ndither 16 bit"),
        "--rate",
        "44100",
        "--level-match");
    assertThat(Arrays.stream(Takes.read(out)[0]).map(x -> 32_768 * x))
        .allMatch(x -> x == Math.rint(x));
  }

  @Test
  void part_atAnotherRate_isTheSamePartOfTheWhole() throws IOException {
    String stages =
        lines(
            "compressor threshold -30 dBFS ratio 4:1 attack 5 ms release 90 ms",
            "sample-rate-conversion 96 kHz",
            "limiter ceiling -14 dBFS look-ahead 3 ms release 50 ms");
    runs.render(0, chain(stages), "--rate", "44100");
    double[] whole = Takes.read(out)[0];
    runs.render(
        0, chain(stages), "--rate", "44100", "--force", "--from", "0:00.1001", "--to", "400ms");
    double[] part = Takes.read(out)[0];
    int first = (int) Math.ceil(Math.round(0.1001 * RATE) * 44_100.0 / RATE);
    assertThat(part).containsExactly(Arrays.copyOfRange(whole, first, 17_640));
  }

  @Test
  void threads_anyNumber_giveTheSameBits() throws IOException {
    String stages =
        lines("sample-rate-conversion 96 kHz", "limiter ceiling -14 dBFS look-ahead 3 ms");
    runs.render(0, chain(stages), "--rate", "44100", "--threads", "1");
    byte[] one = Files.readAllBytes(out);
    runs.render(0, chain(stages), "--rate", "44100", "--threads", "5", "--force");
    assertThat(Files.readAllBytes(out)).isEqualTo(one);
  }

  @ParameterizedTest
  @CsvSource({"'', 48000, the highest of the takes", "44.1 kHz, 44100, the session's rate"})
  void takes_ofDifferentRates_areConvertedToOne(String session, double hertz, String why)
      throws IOException {
    String declared =
        session.isEmpty() ? "" : "session \"s\" {\n  sample-rate " + session + "\n}\n";
    CommandRun run =
        runs.render(
            0,
            declared
                + lines(
                    "chain a {",
                    "  take \"a.wav\"",
                    "  to mix",
                    "}",
                    "chain b {",
                    "  take \"b.wav\" 0:00.1 to 0:00.6",
                    "  to mix",
                    "}",
                    "bus mix {",
                    "  limiter ceiling 0 dBFS",
                    "}"));
    assertThat(run.err()).contains("; converted to ").contains(why);
    try (AudioReader reader = AudioFiles.open(out)) {
      assertThat(reader.format().sampleRateHz()).isEqualTo(hertz);
    }
    double[] mix = Takes.read(out)[0];
    double[] tone = tone(hertz, mix.length);
    for (int n = (int) (hertz / 20); n < 0.55 * hertz; n++) {
      boolean isBoth = n >= 0.1 * hertz;
      if (isBoth && n < 0.11 * hertz) {
        continue; // The part comes in 10 ms.
      }
      assertThat(mix[n]).isCloseTo((isBoth ? 2 : 1) * tone[n], within(2 * RIPPLE));
    }
  }

  @Test
  void lines_onlyWithoutAndDifference_keepTheRate() throws IOException {
    String stages = "gain -20 dB\nsample-rate-conversion 96 kHz\ndither 24 bit";
    runs.render(0, chain(stages), "--only", "1");
    checkLevel(0.1);
    runs.render(0, chain(stages), "--without", "1,3", "--force");
    checkLevel(1);
    runs.render(0, chain(stages), "--difference", "1", "--force");
    checkLevel(0.9);
  }

  private void checkLevel(double factor) throws IOException {
    double[] rendered = Takes.read(out)[0];
    assertThat(rendered).hasSize(60_002);
    double highest = Arrays.stream(rendered, 5_000, 55_000).map(Math::abs).max().orElse(0);
    assertThat(highest).isCloseTo(0.3 * factor, within(1e-4));
  }

  @Test
  void trouble_withARate_leavesNothing() throws IOException {
    runs.checkRefused("must be whole hertz from 8000 to 384000", chain(""), "--rate", "44.1");
    runs.checkRefused("must be whole hertz from 8000 to 384000", chain(""), "--rate", "384001");
    runs.checkRefused("must be whole hertz from 8000 to 384000", chain(""), "--rate", "fast");
    runs.checkRefused(
        "changes the sample rate inside a block",
        chain(lines("parallel {", "path \"x\" {", "sample-rate-conversion 96 kHz", "}", "}")));
    runs.checkRefused(
        "changes the sample rate that what stands behind it is designed for",
        chain("sample-rate-conversion 96 kHz\ngain 1 dB"),
        "--without",
        "1");
    runs.checkRefused(
        "there is no difference of a chain with stages behind a change of the sample rate",
        chain("sample-rate-conversion 96 kHz\ngain 1 dB"),
        "--difference",
        "2");
    runs.checkRefused(
        "listens to `b` by `key` behind a change of the sample rate",
        chain(
                lines(
                    "sample-rate-conversion 96 kHz",
                    "compressor threshold -20 dBFS ratio 2:1 key b"))
            + "chain b {\n  take \"b.wav\"\n}\n",
        "--chain",
        "c");
  }
}
