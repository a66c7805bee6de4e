package chainwright.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** The project's own files, as text. */
final class Sources {

  private Sources() {}

  /** The folder that holds the whole project. */
  static Path root() {
    Path start = Path.of("").toAbsolutePath();
    return Stream.iterate(start, Objects::nonNull, Path::getParent)
        .filter(folder -> Files.isDirectory(folder.resolve("server/quantity")))
        .findFirst()
        .orElseThrow();
  }

  /** The Java sources that are shipped. */
  static List<Path> shipped() {
    return under("server")
        .filter(file -> name(file).matches(".*/src/main/java/.*\\.java"))
        .toList();
  }

  /** All Java sources. */
  static List<Path> java() {
    return under("server").filter(file -> name(file).endsWith(".java")).toList();
  }

  /** The chains that the project shows or tests with. */
  static List<Path> chains() {
    return Stream.concat(under("grammar"), under("server"))
        .filter(file -> name(file).endsWith(".chain"))
        .toList();
  }

  /** A file's path from the project's folder, with forward slashes. */
  static String name(Path file) {
    return root().relativize(file).toString().replace('\\', '/');
  }

  static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Stream<Path> under(String folder) {
    Path start = root().resolve(folder);
    if (!Files.isDirectory(start)) {
      return Stream.of();
    }
    try (Stream<Path> files = Files.walk(start)) {
      return files
          .filter(Files::isRegularFile)
          .filter(file -> !name(file).matches("(.*/)?(target|node_modules)/.*"))
          .sorted()
          .toList()
          .stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
