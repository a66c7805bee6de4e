package chainwright.app.audiofile.vorbis;

import java.io.IOException;

/** Bytes that are no Ogg Vorbis. The message says what is wrong, as a part of a sentence. */
public final class VorbisException extends IOException {

  /**
   * Makes the exception.
   *
   * @param message what is wrong, such as "the setup header ends too early"
   */
  public VorbisException(String message) {
    super(message);
  }
}
