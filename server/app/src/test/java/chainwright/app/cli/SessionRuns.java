package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Renders texts in a folder, to doubles, so that nothing is rounded.
 *
 * @param folder where the takes and the text are
 * @param out the file that is rendered to
 */
record SessionRuns(Path folder, Path out) {

  CommandRun render(int code, String text, Object... more) throws IOException {
    CommandRun run = run(text, more);
    assertThat(run.code()).as(run.err()).isEqualTo(code);
    return run;
  }

  CommandRun run(String text, Object... more) throws IOException {
    return run(write(text), more);
  }

  private Path write(String text) throws IOException {
    return Files.writeString(folder.resolve("session.chain"), text);
  }

  private CommandRun run(Path chain, Object... more) {
    Stream<Object> usual = Stream.of("render", chain, "-o", out, "--bits", "64f");
    return CommandRun.of(Stream.concat(usual, Stream.of(more)).toArray());
  }

  /** Checks that nothing is rendered, with this complaint, and that no file is left. */
  void checkRefused(String message, String text, Object... more) throws IOException {
    Files.deleteIfExists(out);
    Path chain = write(text);
    List<Path> before = files();
    CommandRun run = run(chain, more);
    assertThat(run.err()).contains(message);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(files()).isEqualTo(before);
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }
}
