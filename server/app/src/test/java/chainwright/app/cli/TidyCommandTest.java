package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TidyCommandTest {

  private static final String UNTIDY = "chain a {\nhigh-pass   66Hz  # kept\n}";
  private static final String TIDY = "chain a {\n  high-pass 66 Hz  # kept\n}\n";

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir Path folder;

  @Test
  void tidy_untidyFile_isRewritten() throws IOException {
    Path file = write("a.chain", UNTIDY);
    assertThat(run(file.toString())).isZero();
    assertThat(file).hasContent(TIDY);
    assertThat(out.toString()).contains("tidied: " + file);
    assertThat(run(file.toString())).isZero();
    assertThat(file).hasContent(TIDY);
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactly(file);
    }
  }

  @Test
  void check_untidyFile_isNamedAndLeft() throws IOException {
    Path file = write("a.chain", UNTIDY);
    assertThat(run("--check", file.toString())).isEqualTo(1);
    assertThat(file).hasContent(UNTIDY);
    assertThat(out.toString()).contains("would change: " + file);
  }

  @Test
  void check_tidyFolder_isClean() throws IOException {
    write("a.chain", TIDY);
    write("notes.txt", "chain   x");
    assertThat(run("--check", folder.toString())).isZero();
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void tidy_oneFileGone_doesTheOthersAndSaysSo() throws IOException {
    Path file = write("a.chain", UNTIDY);
    Path gone = folder.resolve("gone.chain");
    assertThat(run(gone.toString(), file.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("`" + gone + "` does not exist");
    assertThat(file).hasContent(TIDY);
  }

  @Test
  void tidy_notUtf8_isLeftAlone() throws IOException {
    Path file = folder.resolve("a.chain");
    byte[] bytes = "chain a { } # caf\u00e9".getBytes(StandardCharsets.ISO_8859_1);
    Files.write(file, bytes);
    assertThat(run(file.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("is not written in UTF-8");
    assertThat(file).hasBinaryContent(bytes);
  }

  @Test
  void run_noFileNamed_isWrongUsage() {
    assertThat(run()).isEqualTo(2);
    assertThat(err.toString()).contains("FILE");
  }

  private int run(String... arguments) {
    String[] all = new String[arguments.length + 1];
    all[0] = "tidy";
    System.arraycopy(arguments, 0, all, 1, arguments.length);
    return ChainwrightCommand.run(new PrintWriter(out, true), new PrintWriter(err, true), all);
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }
}
