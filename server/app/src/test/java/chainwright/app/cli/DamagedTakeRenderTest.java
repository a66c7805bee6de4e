package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.audiofile.AudioFormat;
import chainwright.app.audiofile.FileKind;
import chainwright.app.audiofile.SampleKind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A take that is damaged somewhere is rendered with silence there; the rest of it is not lost. */
class DamagedTakeRenderTest {

  private static final int RATE = 48_000;

  /** Each of these remembers what it hears, as it was or as a level. */
  private static final String REMEMBERING =
      """
        hum-removal mains 50 Hz
        high-pass 80 Hz 24 dB/oct
        de-ess band 5 to 9 kHz threshold -50 dBFS
        dynamic-bell 300 Hz Q 2 threshold -40 dBFS ratio 3:1 max-cut 6 dB
        compressor threshold -30 dBFS ratio 3:1 attack 5 ms release 80 ms
        saturation tape thd-at-alignment 1 %%
        reverb decay 300 ms blend 20 %%
      """;

  @TempDir Path folder;
  private Path out;

  @BeforeEach
  void nameTheRender() {
    out = folder.resolve("out.wav");
  }

  private Path floats(String name, double[]... channels) throws IOException {
    return Takes.write(
        folder.resolve(name),
        AudioFormat.of(FileKind.WAVE, RATE, channels.length, SampleKind.ofFloat(32)),
        channels);
  }

  private CommandRun render(String text, Object... more) throws IOException {
    Path chain = Files.writeString(folder.resolve("c.chain"), text);
    Object[] words = {"render", chain, "-o", out, "--bits", "64f", "--force", "--as-written"};
    Object[] all = Arrays.copyOf(words, words.length + more.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return CommandRun.of(all);
  }

  private static double[] with(double[] samples, double value, int... frames) {
    double[] copy = samples.clone();
    for (int frame : frames) {
      copy[frame] = value;
    }
    return copy;
  }

  @Test
  void samples_thatAreNoSound_areSilentAndTheRestIsAsItWouldBe() throws IOException {
    double[] left = Takes.noise(RATE, 3);
    double[] right = Takes.noise(RATE, 4);
    floats("clean.wav", with(left, 0, 12_000, 12_001, 30_000), with(right, 0, 12_000, 36_000));
    floats(
        "bad.wav",
        with(with(left, Double.NaN, 12_000, 12_001), Double.NEGATIVE_INFINITY, 30_000),
        with(with(right, Double.POSITIVE_INFINITY, 12_000), 1e30, 36_000));
    String chain = "chain c {\n take \"%s\"\n" + REMEMBERING + "}\n";
    CommandRun clean = render(chain.formatted("clean.wav"));
    assertThat(clean.code()).as(clean.err()).isZero();
    double[][] wanted = Takes.read(out);
    CommandRun bad = render(chain.formatted("bad.wav"));
    assertThat(bad.code()).as(bad.err()).isEqualTo(1);
    assertThat(bad.err())
        .contains(
            "c: 5 samples are no sound (no number, infinite, or over 200 dB above full scale) and"
                + " silent here, from 0.250 s to 0.750 s");
    assertThat(Takes.read(out)).isDeepEqualTo(wanted);
  }

  @Test
  void samples_ofATakeThatIsConvertedAndReadTwice_areCountedOnce() throws IOException {
    floats("bad.wav", with(Takes.noise(RATE, 3), Double.NaN, 24_000));
    Takes.write(folder.resolve("other.wav"), 44_100, Takes.noise(44_100, 5));
    String session =
        """
        session { sample-rate 44.1 kHz }
        chain bad {
          take "bad.wav"
          to mix
        }
        chain other {
          take "other.wav"
          to mix
        }
        bus mix { max-true-peak -1 dBTP }
        """;
    Path chain = Files.writeString(folder.resolve("c.chain"), session);
    CommandRun run = CommandRun.of("render", chain, "-o", out, "--level-match");
    assertThat(run.code()).as(run.err()).isEqualTo(1);
    assertThat(run.err()).contains("bad: 1 sample is no sound").contains("here, at 0.500 s");
    for (double sample : Takes.read(out)[0]) {
      assertThat(sample).isFinite();
    }
  }

  @Test
  void wave_cutShort_isRenderedAndEndsWithOne() throws IOException {
    byte[] whole = Files.readAllBytes(floats("take.wav", Takes.noise(RATE, 6)));
    Files.write(folder.resolve("take.wav"), Arrays.copyOf(whole, whole.length / 2));
    CommandRun run = render("chain c {\n take \"take.wav\"\n gain -1 dB\n}\n");
    assertThat(run.code()).as(run.err()).isEqualTo(1);
    assertThat(run.err()).contains("the rest is missing, perhaps a copy that broke off");
  }

  @Test
  void wave_headerThatSaysNoLength_isRenderedAndEndsWithZero() throws IOException {
    Path take = floats("take.wav", Takes.noise(RATE, 6));
    byte[] bytes = Files.readAllBytes(take);
    int data = new String(bytes, StandardCharsets.ISO_8859_1).indexOf("data");
    Arrays.fill(bytes, data + 4, data + 8, (byte) 0xff);
    Arrays.fill(bytes, 4, 8, (byte) 0xff);
    Files.write(take, bytes);
    CommandRun run = render("chain c {\n take \"take.wav\"\n gain -1 dB\n}\n");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.err()).contains("all 1.000 s that the file holds are read");
  }

  @Test
  void flac_brokenInTheMiddle_isSilentThereAndSaysWhen() throws IOException {
    Path take =
        Takes.write(
            folder.resolve("take.flac"),
            AudioFormat.of(FileKind.FLAC, RATE, 1, SampleKind.ofInteger(16)),
            Takes.noise(RATE, 6));
    byte[] bytes = Files.readAllBytes(take);
    bytes[bytes.length / 2] ^= 0x55;
    Files.write(take, bytes);
    CommandRun run = render("chain c {\n take \"take.flac\"\n gain -1 dB\n}\n");
    assertThat(run.code()).as(run.err()).isEqualTo(1);
    assertThat(run.err()).containsOnlyOnce("c: damaged at 0.").contains("are silent");
    double[] after = Takes.read(out)[0];
    assertThat(after).hasSize(RATE);
    assertThat(after[100]).isNotZero();
    assertThat(after[RATE - 100]).isNotZero();
  }
}
