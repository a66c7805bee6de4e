package chainwright.app.audiofile;

/** A file cannot be written. Nothing has changed on the disk, and no draft is left. */
public final class OutputFileException extends AudioFileException {

  OutputFileException(String file, String expected, String found, String remedy) {
    super(file, expected, found, remedy);
  }

  OutputFileException(String message, Throwable cause) {
    super(message, cause);
  }
}
