package chainwright.app.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FindingPagesTest {

  @Test
  void page_ofARuleInAFolderWithBlanks_hasAnAddressThatLeadsToIt(@TempDir Path home)
      throws IOException {
    Path folder = Files.createDirectories(home.resolve("the program").resolve("findings"));
    Path page = Files.writeString(folder.resolve("over-steep-slope.md"), "# Too steep");
    String address = new FindingPages(folder).addressOf("over-steep-slope").orElseThrow();
    assertThat(Path.of(URI.create(address))).isEqualTo(page);
    assertThat(address).startsWith("file:///").doesNotContain(" ");
  }

  @Test
  void page_thatAFolderOfAnotherVersionHasNot_hasNoAddress(@TempDir Path folder) {
    assertThat(new FindingPages(folder).addressOf("stray-character")).isEmpty();
  }
}
