package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class DemoCommandTest {

  private static final Path DEMO = Path.of("../../grammar/demo");

  @TempDir Path folder;

  @Test
  void demo_newFolder_holdsEveryFileOfTheSession() throws IOException {
    Path target = folder.resolve("new/session");
    CommandRun run = CommandRun.of("demo", target);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("chainwright check " + target);
    try (Stream<Path> shipped = Files.list(DEMO);
        Stream<Path> written = Files.list(target);
        Stream<Path> beside = Files.list(target.resolveSibling(""))) {
      assertThat(written.map(target::relativize))
          .containsExactlyInAnyOrderElementsOf(
              Stream.concat(shipped.map(DEMO::relativize), Stream.of(Path.of("takes"))).toList());
      assertThat(beside).containsExactly(target);
    }
    for (String name : DemoCommand.FILES) {
      assertThat(target.resolve(name)).hasSameBinaryContentAs(DEMO.resolve(name));
    }
  }

  @Test
  void demo_placeTaken_writesNothing() throws IOException {
    Path file = Files.writeString(folder.resolve("notes.chain"), "mine");
    for (Path taken : new Path[] {folder, file, file.resolve("below")}) {
      CommandRun run = CommandRun.of("demo", taken);
      assertThat(run.code()).as("%s", taken).isEqualTo(2);
      assertThat(run.err()).startsWith("chainwright: `" + taken + "` ");
      assertThat(run.out()).isEmpty();
    }
    assertThat(file).hasContent("mine");
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactly(file);
    }
  }

  /** The folder in which it is made is none that anybody has named. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void demo_whereNoFolderCanBeMade_saysSoByTheNameGiven() {
    CommandRun run = CommandRun.of("demo", "/proc/session");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .startsWith("chainwright: `/proc/session` cannot be written: ")
        .doesNotContain("draft");
  }

  @Test
  void session_checked_hasNoWarnings_andTheFileToReviewHasFindings() {
    Path target = folder.resolve("session");
    CommandRun.of("demo", target);
    CommandRun session =
        CommandRun.of("check", "--fail-on", "warning", target.resolve("tin-roof-letters.chain"));
    assertThat(session.code()).as(session.out()).isZero();
    CommandRun review = CommandRun.of("check", target.resolve("to-review.chain"));
    assertThat(review.code()).isEqualTo(1);
    assertThat(review.out()).contains("missing-take", "unknown-stage", "missing-unit");
  }
}
