package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckCommandTest {

  private static final String CLEAN = "chain lead {\n  high-pass 66 Hz 12 dB/oct\n}\n";
  private static final String UNKNOWN = "chain lead {\n\n  hi-pass 66 Hz  # here\n}\n";
  private static final String NO_TAKE = "chain lead {\n  take \"rain.wav\"\n}\n";

  @TempDir Path folder;

  /** How grave the gravest finding is: clean, a warning (no take), an error (unknown word). */
  @Test
  void check_exitCode_followsFailOn() throws IOException {
    Path clean = write("clean.chain", CLEAN);
    Path warning = write("warning.chain", NO_TAKE);
    Path error = write("error.chain", UNKNOWN);
    check(0, clean);
    check(1, warning);
    check(1, error);
    check(0, "--fail-on", "error", warning);
    check(1, "--fail-on", "hint", warning);
    check(1, "--fail-on", "ERROR", error);
    check(1, folder);
    check(1, "--format", "json", error);
    check(0, "--format", "json", "--fail-on", "error", warning);
  }

  @Test
  void check_badInput_isRefusedWithAReason() throws IOException {
    Path clean = write("clean.chain", CLEAN);
    Path binary = folder.resolve("a.wav");
    Files.write(binary, new byte[] {'R', 'I', 'F', 'F', 0, 0, 1, 2});
    Path controls = folder.resolve("controls.chain");
    Files.writeString(controls, "RIFF\u0004\u0001WAVEfmt \u0010\u0001data\u0002\u0003");
    Path latin = folder.resolve("latin.txt");
    Files.write(latin, "chain a { } # caf\u00e9".getBytes(StandardCharsets.ISO_8859_1));
    Path empty = Files.createDirectory(folder.resolve("empty"));
    refused("`" + folder.resolve("gone.chain") + "` does not exist", folder.resolve("gone.chain"));
    refused("is no text; name a chain file", binary);
    refused("is no text; name a chain file", controls);
    refused("is not written in UTF-8", latin);
    refused("holds no file that ends in .chain", empty);
    refused("`FILE` is missing; write `chainwright check FILE`");
    refused("--format", "--format", "yaml", clean);
    refused("--fail-on", "--fail-on", "never", clean);
    refused("there is no option `--colour`; did you mean `--color`?", "--colour", clean);
  }

  @Test
  void check_pattern_namesTheFilesThatMatch() throws IOException {
    Path takes = Files.createDirectories(folder.resolve("takes/second"));
    Files.writeString(takes.resolve("vocal-1.chain"), CLEAN);
    Files.writeString(folder.resolve("takes/vocal-2.chain"), CLEAN);
    Files.writeString(folder.resolve("takes/kick.chain"), CLEAN);
    assertThat(CommandRun.of("check", folder + "/takes/vocal-*.chain").out())
        .startsWith("1 file checked");
    assertThat(CommandRun.of("check", folder + "/**/vocal-{1,2}.chain").out())
        .startsWith("2 files checked");
    refused("no file matches", folder + "/takes/snare-*.chain");
    refused("is no pattern", folder + "/takes/vocal-[.chain");
  }

  /** Whoever may read everything, such as root, is refused nothing. */
  @Test
  void check_folderWithoutPermission_isSaidAndTheOthersJudged() throws IOException {
    Path locked = Files.createDirectory(folder.resolve("locked"));
    write("clean.chain", CLEAN);
    Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("---------"));
    try {
      assumeFalse(Files.isReadable(locked));
      CommandRun run = CommandRun.of("check", folder);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).contains("`" + locked + "` cannot be looked into");
      assertThat(run.out()).startsWith("1 file checked");
    } finally {
      Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("rwx------"));
    }
  }

  @Test
  void check_oneFileGone_judgesTheOthers() throws IOException {
    Path error = write("error.chain", UNKNOWN);
    CommandRun run = CommandRun.of("check", folder.resolve("gone.chain"), error);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("does not exist");
    assertThat(run.out()).contains("unknown-stage");
  }

  @Test
  void text_takeGone_isWrittenAsPeopleRead() throws IOException {
    Path file = write("warning.chain", NO_TAKE);
    CommandRun run = CommandRun.of("check", file);
    assertThat(run.out().lines())
        .containsExactly(
            "warning  The take `rain.wav` is not there",
            "         " + file + ":2:8  missing-take",
            "      2    take \"rain.wav\"",
            "                ^^^^^^^^^^",
            "         why     Nothing can be measured on a recording that is not there.",
            "         do      Mend the path, which counts from this file's folder, or put the",
            "                 recording there.",
            "",
            "1 file checked: 1 warning",
            "More about a finding: chainwright explain missing-take");
  }

  @Test
  void text_colourAlways_hasEscapesAndTheSameWords() throws IOException {
    Path file = write("warning.chain", NO_TAKE);
    String plain = CommandRun.of("check", "--color", "never", file).out();
    String coloured = CommandRun.of("check", "--color", "always", file).out();
    assertThat(plain).doesNotContain("\u001b");
    assertThat(coloured).contains("\u001b[1;33mwarning\u001b[0m");
    assertThat(coloured.replaceAll("\u001b\\[[0-9;]*m", "")).isEqualTo(plain);
  }

  @Test
  void text_controlCharacters_doNotReachTheTerminal() throws IOException {
    Path file = write("escape.chain", "chain a {\n\thi-pass \u001b[2J 66 Hz\n}\n");
    assertThat(CommandRun.of("check", file).out()).doesNotContain("\u001b").contains("\ufffd[2J");
  }

  @Test
  void json_unknownStage_saysWhereAndHowToMendIt() throws IOException {
    Path file = write("error.chain", UNKNOWN);
    CommandRun run = CommandRun.of("check", "--format", "json", file);
    JsonObject all = JsonParser.parseString(run.out()).getAsJsonObject();
    assertThat(all.getAsJsonObject("counts").get("error").getAsInt()).isEqualTo(1);
    JsonObject finding = all.getAsJsonArray("findings").get(0).getAsJsonObject();
    assertThat(finding.get("code").getAsString()).isEqualTo("unknown-stage");
    assertThat(finding.get("severity").getAsString()).isEqualTo("error");
    assertThat(finding.get("file").getAsString()).isEqualTo(file.toString());
    assertThat(finding.get("line").getAsInt()).isEqualTo(3);
    assertThat(finding.get("column").getAsInt()).isEqualTo(3);
    assertThat(finding.get("endColumn").getAsInt()).isEqualTo(10);
    JsonObject edit =
        finding
            .getAsJsonArray("fixes")
            .get(0)
            .getAsJsonObject()
            .getAsJsonArray("edits")
            .get(0)
            .getAsJsonObject();
    assertThat(edit.get("text").getAsString()).isEqualTo("high-pass");
  }

  @Test
  void imports_areReadFromDisk() throws IOException {
    write("presets.chain", "preset rumble-guard {\n  high-pass 60 Hz 12 dB/oct\n}\n");
    Path found =
        write("found.chain", "import \"presets.chain\"\n\nchain a {\n  apply rumble-guard\n}\n");
    Path lost =
        write("lost.chain", "import \"gone.chain\"\n\nchain a {\n  high-pass 60 Hz 12 dB/oct\n}\n");
    check(0, found);
    CommandRun run = CommandRun.of("check", lost);
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out())
        .contains("error    The file `gone.chain` cannot be read", ":1:8  import-not-found");
  }

  private static void check(int code, Object... arguments) {
    CommandRun run = run(arguments);
    assertThat(run.code()).as("%s\n%s", run.out(), run.err()).isEqualTo(code);
    assertThat(run.err()).isEmpty();
  }

  private static void refused(String reason, Object... arguments) {
    CommandRun run = run(arguments);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains(reason);
    assertThat(run.out()).isEmpty();
  }

  private static CommandRun run(Object... arguments) {
    Object[] all = new Object[arguments.length + 1];
    all[0] = "check";
    System.arraycopy(arguments, 0, all, 1, arguments.length);
    return CommandRun.of(all);
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }
}
