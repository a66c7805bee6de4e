package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TidyCommandTest {

  private static final String UNTIDY = "chain a {\nhigh-pass   66Hz  # kept\n}";
  private static final String TIDY = "chain a {\n  high-pass 66 Hz  # kept\n}\n";
  private static final String DIFF =
      """
      --- NAME
      +++ NAME
      @@ -1,3 +1,3 @@
       chain a {
      -high-pass   66Hz  # kept
      -}
      \\ No newline at end of file
      +  high-pass 66 Hz  # kept
      +}
      """;

  @TempDir Path folder;

  @Test
  void tidy_untidyFile_isRewritten() throws IOException {
    Path file = write("a.chain", UNTIDY);
    CommandRun first = tidy(0, file);
    assertThat(file).hasContent(TIDY);
    assertThat(first.out()).isEqualTo("tidied: " + file + System.lineSeparator());
    assertThat(tidy(0, file).out()).isEmpty();
    assertThat(file).hasContent(TIDY);
    checkNothingElseIn(file);
  }

  @Test
  void tidy_file_keepsItsPermissions() throws IOException {
    Path file = write("a.chain", UNTIDY);
    Set<PosixFilePermission> odd = PosixFilePermissions.fromString("rw-r---w-");
    Files.setPosixFilePermissions(file, odd);
    tidy(0, file);
    assertThat(file).hasContent(TIDY);
    assertThat(Files.getPosixFilePermissions(file)).isEqualTo(odd);
  }

  @Test
  void tidy_link_goesOnLeadingToTheFile() throws IOException {
    Path file = write("a.chain", UNTIDY);
    Path link = Files.createSymbolicLink(folder.resolve("link.chain"), file);
    tidy(0, link);
    assertThat(link).isSymbolicLink();
    assertThat(file).hasContent(TIDY);
  }

  @Test
  void preview_untidyFile_isAUnifiedDiffAndWritesNothing() throws IOException {
    Path file = write("a.chain", UNTIDY);
    assertThat(tidy(0, "--preview", file).out()).isEqualTo(DIFF.replace("NAME", file.toString()));
    assertThat(tidy(1, "--preview", "--check", file).out()).isNotEmpty();
    assertThat(file).hasContent(UNTIDY);
    checkNothingElseIn(file);
  }

  @Test
  void preview_tidyFile_isEmptyAndSaidToBeTidyBesideIt() throws IOException {
    Path file = write("a.chain", TIDY);
    CommandRun run = tidy(0, "--preview", file);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().strip()).isEqualTo("already tidy: " + file);
    assertThat(CommandRun.withInput(TIDY, "tidy", "--preview", "-").err().strip())
        .isEqualTo("already tidy: the standard input");
  }

  @Test
  void preview_linesEndedByCrLf_showTheirNewEnds() throws IOException {
    Path file = write("a.chain", TIDY.replace("\n", "\r\n").replace("66 Hz", "66Hz"));
    assertThat(tidy(0, "--preview", file).out()).contains("-  high-pass 66Hz  # kept\r\n");
  }

  @Test
  void standardInput_untidy_comesOutTidy() {
    assertThat(CommandRun.withInput(UNTIDY, "tidy", "-").out()).isEqualTo(TIDY);
    assertThat(CommandRun.withInput(UNTIDY, "tidy", "--preview", "-").out())
        .isEqualTo(DIFF.replace("NAME", "-"));
    assertThat(CommandRun.withInput(UNTIDY, "tidy", "--check", "-").code()).isEqualTo(1);
    assertThat(CommandRun.withInput(TIDY, "tidy", "--check", "-").code()).isZero();
    assertThat(CommandRun.withInput("a\0b", "tidy", "-").err()).contains("is no text");
    assertThat(tidy(2, "-", folder).err()).contains("takes no other file");
  }

  @Test
  void check_untidyFile_isNamedAndLeft() throws IOException {
    Path file = write("a.chain", UNTIDY);
    assertThat(tidy(1, "--check", file).out()).contains("would change: " + file);
    assertThat(file).hasContent(UNTIDY);
  }

  @Test
  void check_tidyFolder_isClean() throws IOException {
    write("a.chain", TIDY);
    write("notes.txt", "chain   x");
    assertThat(tidy(0, "--check", folder).out()).isEmpty();
  }

  @Test
  void tidy_oneFileGone_doesTheOthersAndSaysSo() throws IOException {
    Path file = write("a.chain", UNTIDY);
    Path gone = folder.resolve("gone.chain");
    assertThat(tidy(2, gone, file).err()).contains("`" + gone + "` does not exist");
    assertThat(file).hasContent(TIDY);
  }

  @Test
  void tidy_textOfAnotherKind_isLeftAlone() throws IOException {
    String notes = "# Notes\n\nhello   world\n    - item\n";
    Path file = write("notes.md", notes);
    assertThat(tidy(2, file).err()).contains("notes.md` holds no chain, bus or preset");
    assertThat(file).hasContent(notes);
    Path other = write("song.txt", UNTIDY);
    tidy(0, other);
    assertThat(other).hasContent(TIDY);
  }

  @Test
  void tidy_notUtf8_isLeftAlone() throws IOException {
    Path file = folder.resolve("a.chain");
    byte[] bytes = "chain a { } # caf\u00e9".getBytes(StandardCharsets.ISO_8859_1);
    Files.write(file, bytes);
    assertThat(tidy(2, file).err()).contains("is not written in UTF-8");
    assertThat(file).hasBinaryContent(bytes);
  }

  @Test
  void run_noFileNamed_isWrongUsage() {
    assertThat(tidy(2).err()).contains("FILE").contains("See `chainwright tidy --help`");
  }

  private static CommandRun tidy(int code, Object... arguments) {
    CommandRun run =
        CommandRun.of(Stream.concat(Stream.of("tidy"), Stream.of(arguments)).toArray());
    assertThat(run.code()).as(run.err()).isEqualTo(code);
    return run;
  }

  private void checkNothingElseIn(Path file) throws IOException {
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactly(file);
    }
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }
}
