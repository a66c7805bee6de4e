package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SessionRenderTest {

  private static final int RATE = 48_000;
  private static final int FRAMES = 30_000;

  /** Doubles are written as they are, so what is left is the arithmetic of some sums. */
  private static final double ROUNDING = 1e-12;

  /** 20 lg 0.5 dB and its double, so that faders are factors of 1/2 and 1/4. */
  private static final String HALF = "-6.020599913279624 dB";

  private static final String QUARTER = "-12.041199826559248 dB";

  @TempDir Path folder;
  private Path out;
  private SessionRuns runs;
  private double[] a;
  private double[] b;

  @BeforeEach
  void writeTakes() throws IOException {
    a = Takes.noise(FRAMES, 3);
    b = Takes.noise(FRAMES, 4);
    Takes.write(folder.resolve("a.wav"), RATE, a);
    Takes.write(folder.resolve("b.wav"), RATE, b);
    out = folder.resolve("mix.wav");
    runs = new SessionRuns(folder, out);
  }

  @Test
  void fadersAndSends_busesIntoBuses_addUp() throws IOException {
    runs.render(
        0,
        """
        chain a {
          take "a.wav"
          to group fader %1$s
          send effects %1$s post-fader
        }
        chain b {
          take "b.wav"
          to mix fader %2$s
          send effects %1$s pre-fader
        }
        bus group { to mix fader %1$s }
        bus effects { to group }
        bus mix {
        }
        """
            .formatted(HALF, QUARTER));
    double[][] mix = Takes.read(out);
    assertThat(mix).hasDimensions(1, FRAMES);
    double[] expected = new double[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      // a: 1/2 · 1/2 by its group, 1/2 · 1/2 · 1/2 by the effects; b: 1/4 and 1/2 · 1/2.
      expected[i] = 0.375 * a[i] + 0.5 * b[i];
    }
    assertThat(mix[0]).containsExactly(expected, within(ROUNDING));
  }

  @Test
  void latencies_onAllWaysToTheMix_areMadeEqual() throws IOException {
    runs.render(
        0,
        """
        chain late {
          take "a.wav"
          to first
          limiter ceiling 0 dBFS release 100 ms look-ahead 5 ms
          align -37 samples
        }
        chain early {
          take "a.wav"
          to mix
          delay 37 samples
          polarity inverted
        }
        bus first {
          to second
          limiter ceiling 0 dBFS release 100 ms look-ahead 3 ms
        }
        bus second {
          to mix
          align -90 samples
          delay 53 samples
        }
        bus mix {
          delay 37 samples
        }
        """);
    double[] mix = Takes.read(out)[0];
    // By its text, late is 74 frames early and early 37 late; the mix puts both 37 later.
    double[] expected = new double[mix.length];
    for (int i = 0; i < mix.length; i++) {
      expected[i] =
          (i + 37 < FRAMES ? a[i + 37] : 0) - (i >= 74 && i - 74 < FRAMES ? a[i - 74] : 0);
    }
    assertThat(mix).containsExactly(expected, within(ROUNDING));
  }

  @Test
  void key_anotherChainWithTheSameSound_actsAsTheOwnSound() throws IOException {
    String dynamics =
        "compressor threshold -30 dBFS ratio 4:1 attack 3 ms release 60 ms%n"
            + "  gate threshold -40 dBFS%s%n";
    String stages = "  take \"a.wav\"\n  limiter ceiling 0 dBFS look-ahead 2 ms\n  ";
    runs.render(0, "chain own {\n" + stages + dynamics.formatted("") + "}\n", "--chain", "own");
    double[] own = Takes.read(out)[0];
    runs.render(
        0,
        "chain keyed {\n"
            + stages
            + dynamics.replace(" release 60 ms", " release 60 ms key twin").formatted("")
            + "}\nchain twin {\n  take \"a.wav\"\n  limiter ceiling 0 dBFS look-ahead 5 ms\n}\n",
        "--chain",
        "keyed",
        "--force");
    assertThat(Takes.read(out)[0]).containsExactly(own);
  }

  @Test
  void threads_anyNumber_giveTheSameBits() throws IOException {
    List<byte[]> mixes = new ArrayList<>();
    for (String threads : List.of("1", "2", "7")) {
      Path stems = folder.resolve("stems" + threads);
      runs.render(0, busy(), "--threads", threads, "--force", "--stems", stems);
      mixes.add(Files.readAllBytes(out));
      assertThat(Files.readAllBytes(stems.resolve("mix/voices.wav")))
          .isEqualTo(Files.readAllBytes(folder.resolve("stems1/mix/voices.wav")));
    }
    assertThat(mixes).allSatisfy(mix -> assertThat(mix).isEqualTo(mixes.get(0)));
  }

  @Test
  void stems_ofABus_addUpToWhatItGets() throws IOException {
    Path stems = folder.resolve("stems");
    CommandRun run = runs.render(0, busy(), "--stems", stems);
    assertThat(run.out()).contains("6 stems");
    runs.render(0, busy().replaceAll("(?s)bus mix \\{.*?\\n\\}", "bus mix {\n}"), "--force");
    checkSum(Takes.read(out), stems.resolve("mix"), List.of("drums.wav", "voices.wav"));
    runs.render(0, busy(), "--force", "--chain", "voices", "--without", "1");
    checkSum(Takes.read(out), stems.resolve("voices"), List.of("a.wav", "b.wav", "drums.wav"));
    CommandRun again = runs.run(busy(), "--force", "--stems", stems);
    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err()).contains("exists already");
  }

  @Test
  void part_ofASession_isTheSamePartOfTheWhole() throws IOException {
    runs.render(0, busy());
    double[][] whole = Takes.read(out);
    runs.render(0, busy(), "--force", "--from", "0:00.1", "--to", "0:00.3");
    double[][] part = Takes.read(out);
    assertThat(part).hasDimensions(2, RATE / 5);
    assertThat(part[1]).isEqualTo(Arrays.copyOfRange(whole[1], RATE / 10, 3 * RATE / 10));
  }

  @Test
  void session_muchLouderThanItsLoudestTake_isHeldBeforeItsDither() throws IOException {
    String text =
        """
        chain a {
          take "a.wav"
          to mix fader +9 dB
        }
        bus mix {
          dither 16 bit
        }
        """;
    CommandRun run = runs.render(1, text);
    assertThat(run.out()).contains("gain applied: \u22129.0 dB, held at the loudness of the take");
    for (double sample : Takes.read(out)[0]) {
      assertThat(sample * 32768).isEqualTo(Math.rint(sample * 32768));
    }
  }

  @Test
  void dynamics_ofEachChainAndBus_sayWhatTheyGet() throws IOException {
    String text =
        """
        chain a {
          take "a.wav"
          to mix fader %s
          gate threshold -60 dBFS
        }
        bus mix {
          compressor threshold -40 dBFS ratio 2:1 attack 1 ms release 30 ms make-up 3 dB as glue
        }
        """;
    String up = runs.render(0, text.formatted("0 dB"), "--as-written").out();
    String down = runs.render(0, text.formatted("-6 dB"), "--as-written", "--force").out();
    // White noise between ±0.1 has 20 lg (0.1 / √3) + 3.01 = −21.8 dBFS as a sine has it.
    assertThat(up).containsPattern("a +1 gate +\u221221\\.8 +\u221220\\.0 +0\\.0 ");
    assertThat(up).containsPattern("mix +1 compressor glue +\u221221\\.8 +\u221220\\.0");
    assertThat(down).containsPattern("a +1 gate +\u221221\\.8 +\u221220\\.0 +0\\.0 ");
    assertThat(down).containsPattern("mix +1 compressor glue +\u221227\\.8 +\u221226\\.0");
    assertThat(usualReduction(up) - usualReduction(down)).isCloseTo(3, within(0.25));
  }

  private static double usualReduction(String sheet) {
    Matcher row = Pattern.compile("glue .* (\\S+) +\\S+\n").matcher(sheet);
    assertThat(row.find()).as(sheet).isTrue();
    return Double.parseDouble(row.group(1));
  }

  /** The mix does nothing, so that it is the sum of what it gets, converted or not. */
  @Test
  void stems_atAnotherRate_addUpToTheMixThere() throws IOException {
    Path stems = folder.resolve("stems");
    String text =
        """
        chain a {
          take "a.wav"
          to mix
          limiter ceiling -24 dBFS look-ahead 4 ms
        }
        chain b {
          take "b.wav"
          to mix fader -5 dB
          reverb 200 ms
        }
        bus mix {
        }
        """;
    runs.render(0, text, "--stems", stems, "--rate", "32000", "--as-written");
    double[][] whole = Takes.read(out);
    assertThat(Takes.read(stems.resolve("mix/a.wav"))[0]).hasSameSizeAs(whole[0]);
    checkSum(whole, stems.resolve("mix"), List.of("a.wav", "b.wav"));
  }

  @Test
  void trouble_ofASession_leavesNothing() throws IOException {
    String mix = "bus mix {\n}\n";
    runs.checkRefused(
        "changes the sample rate, but `mix` is made of or listens to this chain",
        "chain a {\n take \"a.wav\"\n to mix\n sample-rate-conversion 96 kHz\n}\n" + mix);
    runs.checkRefused(
        "hears itself: `x` to `y` to `x`",
        "chain a {\n take \"a.wav\"\n to x\n}\nbus x {\n to y\n to mix\n}\nbus y {\n to x\n}\n"
            + mix);
    runs.checkRefused(
        "no chain that goes to `mix` names a `take`", "chain a {\n to mix\n}\n" + mix);
    runs.checkRefused(
        "the part must lie within the session",
        "chain a {\n take \"a.wav\"\n to mix\n}\n" + mix,
        "--to",
        "9s");
  }

  @Test
  void errors_inOtherChains_refuseOnlyWhatHearsThem() throws IOException {
    String text =
        """
        chain a {
          take "a.wav"
          gain -1 dB
        }
        chain broken {
          take "b.wav"
          to mix
          belll 1 kHz
        }
        bus mix {
        }
        """;
    runs.render(0, text, "--chain", "a");
    runs.checkRefused("the text has errors", text);
  }

  @Test
  void chainWithoutATake_isSilentAndToldOf() throws IOException {
    CommandRun run =
        runs.render(
            0, "chain a {\n take \"a.wav\"\n to mix\n}\nchain later {\n to mix\n}\nbus mix {\n}\n");
    assertThat(run.err()).contains("`later` names no `take` and is silent in this render");
  }

  /** Two voices, drums of two channels, a key, sends, a bus with look-ahead and a mix with pan. */
  private static String busy() {
    return """
        chain a {
          take "a.wav"
          to voices fader -3 dB
          pan -30 %
          compressor threshold -30 dBFS ratio 3:1 attack 5 ms release 80 ms key b
        }
        chain b {
          take "b.wav"
          to voices fader -5 dB
          send drums -12 dB
          high-pass 200 Hz 24 dB/oct
          limiter ceiling -24 dBFS look-ahead 4 ms
        }
        bus drums {
          to mix
          send voices -20 dB
          saturation tape drive 6 dB oversampling 4
        }
        bus voices {
          to mix fader -1 dB
          limiter ceiling -28 dBFS look-ahead 2 ms
        }
        bus mix {
          true-peak-limiter ceiling -29 dBTP
        }
        """;
  }

  private void checkSum(double[][] whole, Path stems, List<String> names) throws IOException {
    try (Stream<Path> files = Files.list(stems)) {
      assertThat(files.map(file -> file.getFileName().toString()).sorted()).isEqualTo(names);
    }
    double[][] sum = new double[whole.length][whole[0].length];
    for (String name : names) {
      double[][] stem = Takes.read(stems.resolve(name));
      assertThat(stem.length).isEqualTo(whole.length);
      for (int c = 0; c < sum.length; c++) {
        for (int i = 0; i < Math.min(sum[c].length, stem[c].length); i++) {
          sum[c][i] += stem[c][i];
        }
      }
    }
    for (int c = 0; c < sum.length; c++) {
      assertThat(sum[c]).containsExactly(whole[c], within(ROUNDING));
    }
  }
}
