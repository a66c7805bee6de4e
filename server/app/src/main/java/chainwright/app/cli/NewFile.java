package chainwright.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file as a whole or not at all. */
final class NewFile {

  private NewFile() {}

  /**
   * Writes beside the file and moves into place.
   *
   * @param file the file
   * @param text what to write
   * @param mayReplace whether a file that is there may be replaced
   * @throws IOException if it is there and must not be replaced, or cannot be written; then nothing
   *     has changed
   */
  static void write(Path file, String text, boolean mayReplace) throws IOException {
    if (Files.isDirectory(file)) {
      throw new IOException("`" + file + "` is a folder; name a file in it");
    }
    if (!mayReplace && Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new IOException("`" + file + "` exists already; --force replaces it");
    }
    Path folder = file.toAbsolutePath().resolveSibling("");
    if (!Files.isDirectory(folder)) {
      throw new IOException("the folder `" + folder + "` does not exist");
    }
    try {
      Path draft = Files.createTempFile(folder, ".plot", null);
      try {
        Files.writeString(draft, text);
        Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(draft);
      }
    } catch (IOException e) {
      throw new IOException("`" + file + "` cannot be written: " + e.getMessage(), e);
    }
  }
}
