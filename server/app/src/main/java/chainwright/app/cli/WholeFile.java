package chainwright.app.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes a file as a whole or not at all: beside it, and then moved into its place. */
final class WholeFile {

  private WholeFile() {}

  /**
   * Writes a new file.
   *
   * @param file the file
   * @param content what to write
   * @param mayReplace whether a file that is there may be replaced
   * @throws IOException if it is there and must not be replaced, or cannot be written; then nothing
   *     has changed
   */
  static void write(Path file, byte[] content, boolean mayReplace) throws IOException {
    if (Files.isDirectory(file)) {
      throw new IOException("`" + file + "` is a folder; name a file in it");
    }
    if (!mayReplace && Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new IOException("`" + file + "` exists already; --force replaces it");
    }
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw new IOException("`" + file + "` is a device or a pipe, not a file; name a file");
    }
    Path folder = file.toAbsolutePath().resolveSibling("");
    if (!Files.isDirectory(folder)) {
      throw new IOException("the folder `" + folder + "` does not exist");
    }
    try {
      move(content, Files.exists(file) ? file.toRealPath() : file.toAbsolutePath());
    } catch (IOException e) {
      throw FileTrouble.of(file, e);
    }
  }

  /**
   * Puts another text into a file that is there; a link goes on leading to it.
   *
   * @param file the file
   * @param text its new text
   * @throws IOException if it cannot be written; then it is as it was
   */
  static void replace(Path file, String text) throws IOException {
    try {
      Path real = file.toRealPath();
      if (!Files.isWritable(real)) {
        throw new AccessDeniedException(real.toString());
      }
      move(text.getBytes(StandardCharsets.UTF_8), real);
    } catch (IOException e) {
      throw FileTrouble.of(file, e);
    }
  }

  private static void move(byte[] content, Path target) throws IOException {
    Path draft = create(target);
    try {
      Files.write(draft, content);
      if (Files.exists(target)) {
        copyPermissions(target, draft);
      }
      Files.move(draft, target, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(draft);
    }
  }

  /** A file with the permissions that new files get, which one made as temporary has not. */
  private static Path create(Path target) throws IOException {
    for (int i = 0; ; i++) {
      Path draft =
          target.resolveSibling(
              "." + target.getFileName() + "." + ProcessHandle.current().pid() + "-" + i);
      try {
        Files.newByteChannel(draft, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)
            .close();
        return draft;
      } catch (FileAlreadyExistsException taken) {
        if (i > 99) {
          throw taken;
        }
      }
    }
  }

  private static void copyPermissions(Path from, Path to) throws IOException {
    if (from.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(from));
    }
  }
}
