package chainwright.app.audiofile.flac;

import java.io.IOException;

/** Bytes that are no FLAC. The message says what is wrong, as a part of a sentence. */
public final class FlacException extends IOException {

  /**
   * Makes the exception.
   *
   * @param message what is wrong, such as "the check sum of a frame's header is wrong"
   */
  public FlacException(String message) {
    super(message);
  }
}
