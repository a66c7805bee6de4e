package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.plot.CellText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What each command prints, as it was when last looked at; {@code -Dgolden.update=true} rewrites
 * it, to be looked at again before it is committed.
 */
class CommandGoldenTest {

  private static final Path FOLDER = Path.of("src/test/resources/chainwright/app/cli");

  /** The folder of the run, in what is printed. */
  private static final String HERE = "HERE";

  /** Three seconds and a half of invented speech, cut on the left; made by make.py beside it. */
  private static final Path RECORDING = Path.of("src/test/resources/recordings/platform.wav");

  private static final int TERMINAL = 80;

  private static final String SONG =
      """
      session "Wet platform" { sample-rate 48 kHz }

      preset warm "A little warmth" {
        low-shelf 140 Hz +2 dB
          > The room took it, this gives it back.
      }

      chain voice "The announcer" {
        source speech
        intent natural
        to mix fader -2 dB

        > She stands in the draught, so listen to the low end first.
        high-pass 70 Hz 12 dB/oct as draught
        bell 3 kHz -2 dB Q 1.4 bypassed
          note "Kept for the class: switch it on, and off."
        apply warm
        compressor threshold -20 dBFS ratio 2:1 attack 10 ms release 120 ms {
          side-chain { high-pass 120 Hz 6 dB/oct }
        }
        parallel {
          path "dry"
          path "gritty" -12 dB { saturation symmetric drive 6 dB }
        }
        listen 0:04 to 0:06.5 "the s of 'platform six'"
      }

      bus mix { max-true-peak -1 dBTP }
      """;

  private static final String HALL =
      """
      bus hall {
        reverb      1.8 s   bass-ratio 1.3  treble-ratio 0.5  pre-delay 90 ms
        echo        375 ms  feedback 40 %  damping 3 kHz
        compressor  threshold -20 dBFS  ratio 2:1  attack 10 ms  release 120 ms
      }
      """;

  private static final String FAULTY =
      """
      chain lead {
      \tsource lead-vocal
      \thi-pass 66 Hz 18 dB/oct  # \u97f3\u58f0
      \thigh-pass 70 Hz 36 dB/oct
        bell 3,1 kHz -2 dB Q 1.4
      }
      """;

  @TempDir Path folder;

  @BeforeEach
  void write() throws IOException {
    Files.writeString(folder.resolve("song.chain"), SONG);
    Files.writeString(folder.resolve("hall.chain"), HALL);
    Files.writeString(folder.resolve("faulty.chain"), FAULTY);
    Files.createDirectory(folder.resolve("empty"));
    Files.writeString(folder.resolve("blank.chain"), "# Nothing yet.\n");
    Files.copy(RECORDING, Files.createDirectory(folder.resolve("takes")).resolve("platform.wav"));
  }

  static Stream<Arguments> runs() {
    return Stream.of(
        run("nothing"),
        run("help", "--help"),
        run("check-help", "check", "--help"),
        run("explain-help", "explain", "--help"),
        run("plot-help", "plot", "--help"),
        run("measure-help", "measure", "--help"),
        run("render-help", "render", "--help"),
        run("render-no-take", "render", "HERE/song.chain", "--chain", "voice", "-o", "HERE/o.wav"),
        run("render-bus", "render", "HERE/song.chain", "--chain", "mix", "-o", "HERE/o.wav"),
        run("render-text", "render", "HERE/song.chain", "--chain", "voice", "-o", "HERE/o.txt"),
        run("tidy-help", "tidy", "--help"),
        run("demo-help", "demo", "--help"),
        run("lsp-help", "lsp", "--help"),
        run("unknown-command", "chek"),
        run("unknown-option", "check", "--colour", "HERE/song.chain"),
        run("check-nothing", "check"),
        run("check-gone", "check", "HERE/gone.chain", "HERE/empty", "HERE/*.wav"),
        run("check-blank", "check", "HERE/blank.chain"),
        run("check-faulty", "check", "HERE/faulty.chain"),
        run("check-faulty-coloured", "check", "--color", "always", "HERE/faulty.chain"),
        run("check-faulty-json", "check", "--format", "json", "HERE/faulty.chain"),
        run("tidy-preview", "tidy", "--preview", "HERE/faulty.chain", "HERE/song.chain"),
        run("tidy-check", "tidy", "--check", "HERE"),
        run("plot-several", "plot", "HERE/song.chain"),
        run("plot-no-such-stage", "plot", "HERE/song.chain", "--chain", "voice", "--stage", "9"),
        run("plot-chain", "plot", "HERE/song.chain", "--chain", "voice"),
        run("plot-label", "plot", "HERE/song.chain", "--chain", "voice", "--stage", "draught"),
        run("plot-bypassed", "plot", "HERE/song.chain", "--chain", "voice", "--stage", "2"),
        run("plot-level", "plot", "HERE/song.chain", "--chain", "voice", "--stage", "4"),
        run("plot-harmonics", "plot", "HERE/song.chain", "--chain", "voice", "--stage", "5.2.1"),
        run("plot-decay", "plot", "HERE/hall.chain", "--stage", "1"),
        run("plot-repeats", "plot", "HERE/hall.chain", "--stage", "2"),
        run("plot-step", "plot", "HERE/hall.chain", "--stage", "3", "--axis", "time"),
        run("plot-repeats-json", "plot", "HERE/hall.chain", "--stage", "2", "--format", "json"),
        run(
            "plot-json",
            "plot",
            "HERE/song.chain",
            "--chain",
            "voice",
            "--stage",
            "draught",
            "--at",
            "70,1000",
            "--format",
            "json"),
        run("measure-nothing", "measure"),
        run("measure-text", "measure", "HERE/takes/platform.wav", "HERE/gone.wav"),
        run("measure-json", "measure", "--format", "json", "HERE/takes/platform.wav"),
        run("measure-csv", "measure", "--format", "csv", "HERE/takes/platform.wav"),
        run("explain-unknown", "explain", "hi-pass"),
        run("explain-stage", "explain", "tilt"),
        run("explain-stage-source", "explain", "high-pass", "snare"),
        run("explain-setting", "explain", "limiter", "ceiling"),
        run("explain-settings", "explain", "pivot"),
        run("explain-rule", "explain", "over-steep-slope"),
        run("explain-source", "explain", "other"),
        run("explain-word", "explain", "parallel"),
        run("explain-unit", "explain", "bit"),
        run("explain-file", "explain", "HERE/song.chain"),
        run("explain-file-stage", "explain", "HERE/song.chain", "--chain", "voice", "--stage", "1"),
        run("explain-markdown", "explain", "--format", "markdown", "over-steep-slope"),
        run("explain-json", "explain", "--format", "json", "bit"));
  }

  private static Arguments run(String name, String... arguments) {
    return Arguments.of(name, List.of(arguments));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("runs")
  void command_output_asLookedAt(String name, List<String> arguments) throws IOException {
    CommandRun run =
        CommandRun.of(
            arguments.stream().map(one -> one.replace(HERE, folder.toString())).toArray());
    String shown =
        "$ chainwright "
            + String.join(" ", arguments)
            + "\n"
            + run.out()
            + (run.err().isEmpty() ? "" : "--- complaints\n" + run.err())
            + "--- ended with "
            + run.code()
            + "\n";
    String printed = shown.replace(folder.toString(), HERE).replace("\u001b", "<esc>");
    Path golden = FOLDER.resolve(name + ".txt");
    if (Boolean.getBoolean("golden.update")) {
      Files.createDirectories(FOLDER);
      Files.writeString(golden, printed);
    }
    assertThat(printed).isEqualTo(Files.readString(golden));
    if (name.endsWith("help") || name.equals("nothing")) {
      assertThat(printed.lines().mapToInt(CellText::width).max().orElse(0))
          .isLessThanOrEqualTo(TERMINAL);
    }
  }
}
