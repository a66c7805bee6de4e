package chainwright.app.assist;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The example chains and the corpus of the folder {@code grammar}. */
final class ChainsAtHand {

  private ChainsAtHand() {}

  /** The files of a folder below {@code grammar}, in the order of their names. */
  static List<Path> in(String folder) {
    try (Stream<Path> files = Files.list(Path.of("..", "..", "grammar").resolve(folder))) {
      return files.filter(file -> file.toString().endsWith(".chain")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
