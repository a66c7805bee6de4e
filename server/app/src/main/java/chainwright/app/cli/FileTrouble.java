package chainwright.app.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Says in words why a file could not be read or written. */
final class FileTrouble {

  private FileTrouble() {}

  /**
   * Puts a refusal of the system into words.
   *
   * @param file the file as the person named it
   * @param trouble what the system said
   * @return the refusal, with a sentence for its message
   */
  static IOException of(Path file, IOException trouble) {
    return new IOException("`" + file + "` " + reason(trouble), trouble);
  }

  private static String reason(IOException trouble) {
    if (trouble instanceof NoSuchFileException) {
      return "does not exist";
    }
    if (trouble instanceof AccessDeniedException) {
      return "cannot be read or written: permission denied";
    }
    if (trouble instanceof CharacterCodingException) {
      return "is not written in UTF-8";
    }
    String said =
        trouble instanceof FileSystemException system && system.getReason() != null
            ? system.getReason()
            : trouble.getMessage();
    return "cannot be read or written: " + said;
  }
}
