package chainwright.app.lsp;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.Optional;

/**
 * Finds the page of a finding in the folder that is shipped: {@code findings/CODE.md} beside {@code
 * lib}.
 *
 * @param folder the folder of the pages
 */
record FindingPages(Path folder) {

  private static final Optional<FindingPages> SHIPPED = besideTheProgram();

  /** Returns the pages of the program that runs; empty where it runs without its folder. */
  static Optional<FindingPages> shipped() {
    return SHIPPED;
  }

  private static Optional<FindingPages> besideTheProgram() {
    CodeSource source = FindingPages.class.getProtectionDomain().getCodeSource();
    if (source == null || source.getLocation() == null) {
      return Optional.empty();
    }
    try {
      Path jar = Path.of(source.getLocation().toURI());
      return Optional.ofNullable(jar.getParent())
          .map(lib -> new FindingPages(lib.resolveSibling("findings")))
          .filter(pages -> Files.isDirectory(pages.folder()));
    } catch (URISyntaxException e) {
      return Optional.empty();
    }
  }

  /**
   * Returns where a page lies.
   *
   * @param code the code of a finding
   * @return its address; empty if the folder is of another version and has no such page
   */
  Optional<String> addressOf(String code) {
    Path page = folder.resolve(code + ".md");
    return Files.isRegularFile(page) ? Optional.of(page.toUri().toString()) : Optional.empty();
  }
}
