package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Files that are written whole or not at all. */
class WholeFileTest {

  @TempDir Path folder;

  /** A file moved over a device would take its place: who writes to one wants to reach it. */
  @Test
  @DisabledOnOs(OS.WINDOWS)
  void write_ontoAPipe_isRefusedEvenByForce() throws IOException, InterruptedException {
    Path pipe = folder.resolve("pipe.svg");
    assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor()).isZero();
    assertThatThrownBy(() -> WholeFile.write(pipe, new byte[] {1}, true))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("a device or a pipe");
    assertThat(Files.isRegularFile(pipe)).isFalse();
    try (var left = Files.list(folder)) {
      assertThat(left).containsExactly(pipe);
    }
  }
}
