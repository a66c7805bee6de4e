package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RenderCommandTest {

  private static final int RATE = 44_100;
  private static final int FRAMES = 30_000;

  /** Doubles are written as they are, so what is left is the arithmetic of a few filters. */
  private static final double ROUNDING = 1e-12;

  @TempDir Path folder;
  private Path take;
  private Path out;

  @BeforeEach
  void writeTake() throws IOException {
    take = Takes.write(folder.resolve("take.wav"), RATE, Takes.noise(FRAMES, 11));
    out = folder.resolve("out.wav");
  }

  @Test
  void gain_ofHalf_halvesEverySample() throws IOException {
    // 20 lg 0.5 = -6.020599913279624 dB
    render(0, "gain -6.020599913279624 dB");
    double[][] before = Takes.read(take);
    double[][] after = Takes.read(out);
    assertThat(after).hasDimensions(1, FRAMES);
    for (int i = 0; i < FRAMES; i++) {
      assertThat(after[0][i]).isCloseTo(before[0][i] / 2, within(ROUNDING));
    }
  }

  @Test
  void highPass_impulse_rendersItsImpulseResponseAndTail() throws IOException {
    double[] impulse = new double[50];
    impulse[0] = 0.5;
    take = Takes.write(folder.resolve("impulse.wav"), RATE, impulse);
    render(0, "high-pass 1000 Hz 12 dB/oct Q 0.7071067811865476 curve bilinear");
    double[] after = Takes.read(out)[0];
    // Audio EQ Cookbook (W3C Group Note), HPF, as a difference equation at the take's own rate.
    double w0 = 2 * Math.PI * 1000 / RATE;
    double alpha = Math.sin(w0) / (2 * Math.sqrt(0.5));
    double cos = Math.cos(w0);
    double[] expected = new double[after.length];
    for (int i = 0; i < expected.length; i++) {
      double x0 = i == 0 ? 0.5 : 0;
      double x1 = i == 1 ? 0.5 : 0;
      double x2 = i == 2 ? 0.5 : 0;
      double y1 = i > 0 ? expected[i - 1] : 0;
      double y2 = i > 1 ? expected[i - 2] : 0;
      expected[i] =
          ((1 + cos) / 2 * (x0 - 2 * x1 + x2) + 2 * cos * y1 - (1 - alpha) * y2) / (1 + alpha);
    }
    assertThat(after.length).isGreaterThan(100);
    assertThat(after).containsExactly(expected, within(1e-9));
    // 90 dB below the impulse.
    assertThat(Math.abs(after[after.length - 1])).isLessThan(0.5 * Math.pow(10, -90 / 20.0));
  }

  @Test
  void latency_ofLookAhead_isTakenOut() throws IOException {
    render(0, "limiter ceiling 0 dBFS release 100 ms look-ahead 5 ms");
    double[][] before = Takes.read(take);
    double[][] after = Takes.read(out);
    assertThat(after[0].length).isGreaterThanOrEqualTo(FRAMES);
    for (int i = 0; i < FRAMES; i++) {
      assertThat(after[0][i]).isCloseTo(before[0][i], within(ROUNDING));
    }
  }

  @Test
  void part_isTheSamePartOfTheWhole() throws IOException {
    String stage = "compressor threshold -30 dBFS ratio 4:1 attack 5 ms release 90 ms";
    render(0, stage);
    double[] whole = Takes.read(out)[0];
    render(0, stage, "--force", "--from", "0:00.1", "--to", "400ms");
    double[] part = Takes.read(out)[0];
    assertThat(part).hasSize((int) (0.3 * RATE));
    for (int i = 0; i < part.length; i++) {
      assertThat(part[i]).isEqualTo(whole[i + RATE / 10]);
    }
  }

  @Test
  void lines_onlyAndWithoutAndDifference_areWhatTheyLeave() throws IOException {
    String stages = "gain -6.020599913279624 dB as half\n  gain -20 dB";
    checkFactor(0.5, stages, "--only", "half");
    checkFactor(0.1, stages, "--without", "1");
    checkFactor(0.05 - 0.5, stages, "--difference", "2");
    checkFactor(1, stages, "--without", "1,2");
  }

  @Test
  void pan_takeOfOneChannel_becomesTwo() throws IOException {
    render(0, "pan -100 %");
    double[][] after = Takes.read(out);
    assertThat(after).hasDimensions(2, FRAMES);
    assertThat(after[0][7]).isNotZero();
    assertThat(after[1]).containsOnly(0.0, -0.0);
  }

  @Test
  void loudRender_isHeldAtTheTakeUnlessAsWritten() throws IOException {
    CommandRun held = render(1, "gain +7 dB");
    assertThat(held.out()).contains("gain applied: \u22127.0 dB, held at the loudness of the take");
    checkFactor(1, 1e-4, "gain +7 dB");
    checkFactor(Math.pow(10, 5.0 / 20), ROUNDING, "gain +5 dB");
    checkFactor(Math.pow(10, 7.0 / 20), ROUNDING, "gain +7 dB", "--as-written");
    checkFactor(Math.pow(10, 7.0 / 20), ROUNDING, "loudness 0 LUFS\n  gain +7 dB");
  }

  @Test
  void levelMatch_isAsLoudAsTheTake() throws IOException {
    checkFactor(1, 1e-4, "gain -12 dB", "--level-match");
    checkFactor(1, 1e-4, "gain +12 dB", "--level-match");
  }

  @Test
  void shortTake_withoutLoudness_isHeldByItsPeak() throws IOException {
    take =
        Takes.write(
            folder.resolve("click.wav"), RATE, new double[] {0, 0.01, 0.02, 0.01, 0, 0, 0, 0, 0});
    CommandRun run = render(1, "gain +11 dB");
    assertThat(run.out()).contains("held at the true peak of the take").contains("too short");
  }

  @Test
  void trouble_leavesNothing() throws IOException {
    checkRefused(
        "saturation makes no sound yet", "gain -1 dB\n  saturation valve thd-at-alignment 50 %");
    checkRefused(
        "stage 1, line 2: compressor listens to `kick` by `key`, which names no `take`",
        "compressor threshold -20 dBFS ratio 2:1 attack 5 ms release 50 ms key kick");
    checkRefused("the text has errors", "belll 1 kHz");
    checkRefused("the text has errors", "apply nowhere");
    checkRefused("the text has errors", "insert \"box\" send 4 return 0 dBu { gain +6 dB }");
    checkRefused("the text has errors", "during 0:1 to 0:2");
    checkRefused("does not exist", "gain -1 dB", "--take", folder.resolve("gone.wav"));
    checkRefused("within the take", "gain -1 dB", "--to", "10s");
    checkRefused("must be a time in the recording", "gain -1 dB", "--from", "12");
    checkRefused("there is no stage", "gain -1 dB", "--only", "9");
    checkRefused("exclude each other", "gain -1 dB", "--only", "1", "--without", "1");
  }

  @Test
  void output_thatIsThere_isKeptAndTheTakeAlways() throws IOException {
    Files.writeString(out, "mine");
    assertThat(run("gain -1 dB").code()).isEqualTo(2);
    assertThat(out).hasContent("mine");
    byte[] before = Files.readAllBytes(take);
    out = take;
    CommandRun over = run("gain -1 dB", "--force");
    assertThat(over.code()).isEqualTo(2);
    assertThat(over.err()).contains("is the take, which is never written to");
    assertThat(Files.readAllBytes(take)).isEqualTo(before);
  }

  @Test
  void integers_withoutDither_areWarnedOfAndClippingToldByTheCode() throws IOException {
    CommandRun quiet = render(0, "gain -1 dB", "--bits", "24");
    assertThat(quiet.err()).contains("24 bit without `dither`");
    CommandRun dithered = render(0, "gain -1 dB\n  dither 24 bit", "--force", "--bits", "24");
    assertThat(dithered.err()).doesNotContain("dither");
    CommandRun loud = render(1, "gain +30 dB", "--force", "--bits", "16", "--as-written");
    assertThat(loud.err()).contains("were clipped");
    CommandRun floating = render(0, "gain +30 dB", "--force", "--as-written");
    assertThat(floating.err()).contains("dB above full scale").doesNotContain("were clipped");
  }

  @Test
  void take_inTheText_isReadFromItsFolderWithItsPart() throws IOException {
    Path chain = chain("take \"take.wav\" 0:00.1 to 0:00.2\n  gain -1 dB");
    CommandRun run = CommandRun.of("render", chain, "--chain", "c", "-o", out);
    assertThat(run.err()).isEmpty();
    assertThat(Takes.read(out)[0]).hasSize(RATE / 10);
  }

  private void checkFactor(double factor, String stages, Object... more) throws IOException {
    checkFactor(factor, ROUNDING, stages, more);
  }

  private void checkFactor(double factor, double tolerance, String stages, Object... more)
      throws IOException {
    Files.deleteIfExists(out);
    run(stages, more);
    double[] before = Takes.read(take)[0];
    double[] after = Takes.read(out)[0];
    for (int i = 0; i < FRAMES; i++) {
      assertThat(after[i]).isCloseTo(factor * before[i], within(tolerance));
    }
  }

  private void checkRefused(String message, String stages, Object... more) throws IOException {
    CommandRun run = run(stages, more);
    assertThat(run.err()).contains(message);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .noneMatch(name -> name.startsWith("out"));
    }
  }

  private CommandRun render(int code, String stages, Object... more) throws IOException {
    CommandRun run = run(stages, more);
    assertThat(run.code()).as(run.err()).isEqualTo(code);
    return run;
  }

  private CommandRun run(String stages, Object... more) throws IOException {
    Stream<Object> usual = Stream.of("render", chain(stages), "--chain", "c", "-o", out);
    Stream<Object> bits =
        Stream.of(more).anyMatch("--bits"::equals) ? Stream.of() : Stream.of("--bits", "64f");
    Stream<Object> recording =
        Stream.of(more).anyMatch("--take"::equals) ? Stream.of() : Stream.of("--take", take);
    return CommandRun.of(
        Stream.of(usual, bits, recording, Stream.of(more)).flatMap(one -> one).toArray());
  }

  private Path chain(String stages) throws IOException {
    return Files.writeString(
        folder.resolve("c.chain"), "chain c {\n  " + stages + "\n}\n\nbus kick {\n}\n");
  }
}
