package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Who gives a command the wrong kind of file is told in one sentence which command takes it. */
class SeemingFileTest {

  private static final Path TAKE = Path.of("src/test/resources/audiofile/wav-16.wav");

  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "measure song.chain              | is a chain file, not a recording; `chainwright check",
        "measure takes                   | name the recordings in it, such as `HERE/takes/one.wav`",
        "measure notes.txt               | is a text, not a recording",
        "measure bare                    | is a folder without a recording; name one",
        "measure bytes                   | found a file that begins with the bytes",
        "check takes/one.wav             | is a recording (WAV), not a chain file; `chainwright measure",
        "check takes                     | recordings such as `HERE/takes/one.wav` are for `chainwright"
            + " measure`",
        "check bytes                     | is no text; name a chain file",
        "plot takes/one.wav              | `chainwright render CHAINFILE --take HERE/takes/one.wav`",
        "plot bare                       | is a folder without a chain file; name one",
        "plot .                          | name a chain file in it, such as `HERE/./song.chain`",
        "explain takes/one.wav           | is a recording (WAV), not a chain file",
        "explain takes                   | is a folder without a chain file; name one",
        "tidy takes/one.wav              | is a recording (WAV), not a chain file",
        "render takes/one.wav -o new.wav | is a recording (WAV), not a chain file",
        "render takes -o new.wav         | is a folder without a chain file; name one",
        "render song.chain --take notes.txt -o new.wav | found a text",
      })
  void file_ofTheWrongKind_isNamedWithTheCommandThatTakesIt(String command, String expected)
      throws IOException {
    Files.createDirectories(folder.resolve("takes"));
    Files.createDirectories(folder.resolve("bare"));
    Files.copy(TAKE, folder.resolve("takes/one.wav"));
    Files.writeString(folder.resolve("song.chain"), "chain a {\n  gain -6 dB\n}\n");
    Files.writeString(folder.resolve("notes.txt"), "to be done: the fade\n");
    Files.write(folder.resolve("bytes"), new byte[] {1, 0, 2, 0, 3, 0, 4, 0, 5, 0, 6, 0, 7});
    Object[] words =
        Arrays.stream(command.split(" ", -1))
            .map(word -> Files.exists(folder.resolve(word)) ? folder + "/" + word : word)
            .map(word -> word.equals("new.wav") ? folder.resolve(word).toString() : word)
            .toArray();
    CommandRun run = CommandRun.of(words);
    assertThat(run.code()).isEqualTo(ChainwrightCommand.TROUBLE);
    assertThat(run.err().lines()).as(run.err()).hasSize(1);
    assertThat(run.err()).contains(expected.replace("HERE", folder.toString()));
    assertThat(run.out()).isEmpty();
    assertThat(folder.resolve("new.wav")).doesNotExist();
  }

  /** A recording is larger than any chain file, and is known for one all the same. */
  @Test
  void recording_ofManyMegabytes_isKnownForOne() throws IOException {
    Path take = folder.resolve("long.wav");
    byte[] bytes = Arrays.copyOf(Files.readAllBytes(TAKE), 5 << 20);
    Files.write(take, bytes);
    assertThat(CommandRun.of("check", take).err()).contains("is a recording (WAV)");
  }

  @Test
  void errors_inAnotherChain_areCountedBesideTheResult() throws IOException {
    Path song = folder.resolve("song.chain");
    Path take = TAKE.toAbsolutePath();
    Files.writeString(
        song,
        "chain good {\n  take \""
            + take
            + "\"\n  gain -6 dB\n}\nchain bad {\n  belll 1 kHz\n  gain"
            + " 90 dB\n}\n");
    String said = "chainwright: the text has 2 errors";
    String see = "; see `chainwright check " + song + "`\n";
    CommandRun rendered =
        CommandRun.of("render", song, "--chain", "good", "-o", folder.resolve("new.wav"));
    assertThat(rendered.err()).endsWith(said + see);
    assertThat(rendered.code()).isEqualTo(ChainwrightCommand.CLEAN);
    assertThat(CommandRun.of("plot", song, "--chain", "good").err())
        .isEqualTo(said + OpenedChain.LEFT_OUT + see);
    Files.writeString(song, "chain good {\n  take \"" + take + "\"\n  gain -6 dB\n}\n");
    assertThat(CommandRun.of("plot", song).err()).isEmpty();
  }
}
